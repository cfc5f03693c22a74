package club.emberwell.report;

import club.emberwell.bench.MachineReader;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.consensus.MadeTrials;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/** Every trial of the invented club, as the index would hold it. */
public final class InventedTrials {
  private static final Catalog CATALOG = CatalogFiles.catalog();

  private InventedTrials() {}

  public static MadeTrials read() throws IOException {
    Map<String, MachineReader.Result> machines = InventedClubTest.machines();
    Map<String, Long> members = new TreeMap<>();
    Map<String, Long> numbers = new TreeMap<>();
    MadeTrials made = new MadeTrials();
    ObjectMapper json = new ObjectMapper();
    for (String line : Files.readAllLines(Path.of("seed-scenario", "reports.jsonl"))) {
      JsonNode entry = json.readTree(line);
      String by = entry.get("by").asText();
      String machine = by + "/" + entry.get("machine").asText();
      Laser laser = machines.get(machine).values().laser();
      Interpretation read =
          ReportInterpreter.read(
              InventedClubTest.Lines.report(entry), laser, CATALOG, NumberStyle.ANY);
      if (read.readable() && read.ban().isEmpty()) {
        long member = members.computeIfAbsent(by, key -> members.size() + 1L);
        long number = numbers.computeIfAbsent(machine, key -> numbers.size() + 1L);
        read.trials().forEach(trial -> add(made.by(member).on(number), laser, read, trial));
      }
    }
    return made;
  }

  private static void add(
      MadeTrials.Trial made, Laser laser, Interpretation read, TrialSnapshot trial) {
    MadeTrials.Trial added =
        made.of(read.work().process())
            .at(laser.band())
            .in(laser.regime())
            .was(trial.effect())
            .with(Measure.WAVELENGTH, laser.wavelengthNm());
    Double dose =
        trial.derived().arealDose() == null
            ? trial.derived().lineDose()
            : trial.derived().arealDose();
    if (dose != null) {
      added.dose(dose);
    }
    for (WorkProperty word : WorkProperty.of(Shape.WORD)) {
      Filed filed = read.work().word(word);
      if (filed.slug() != null) {
        TermKind kind = word.value().vocabulary();
        added.with(Property.of(word.code()), CATALOG.vocabulary().respondsAs(kind, filed.slug()));
      } else if (filed.written() != null) {
        added.unfiled(Property.of(word.code()), filed.written());
      }
    }
    Double mm = read.work().thicknessMm();
    if (mm != null) {
      added.with(Property.THICKNESS_CLASS, ThicknessClass.of(mm).orElseThrow().code());
      added.with(
          Measure.all().stream().filter(m -> m.code().equals("thickness")).findAny().orElseThrow(),
          mm);
    }
  }
}
