package club.emberwell.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.MachineReader;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.TermKind;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.Entries;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every report of the invented club goes through the same reader as a posted one. */
class InventedClubTest {
  private static final Path CLUB = Path.of("seed-scenario");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Catalog CATALOG = CatalogFiles.catalog();

  @Test
  void everyMachineIsRead() throws IOException {
    Map<String, MachineReader.Result> machines = machines();
    assertTrue(machines.size() >= 40);
    machines.forEach(
        (name, read) -> assertTrue(read.readable(), () -> name + ": " + read.remarks()));
  }

  @Test
  void everyReportIsReadOrRefusedAsItSays() throws IOException {
    Map<String, MachineReader.Result> machines = machines();
    int read = 0;
    List<String> surprises = new ArrayList<>();
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      MachineReader.Result machine =
          machines.get(entry.get("by").asText() + "/" + entry.get("machine").asText());
      Interpretation found =
          ReportInterpreter.read(
              Lines.report(entry), machine.values().laser(), CATALOG, NumberStyle.ANY);
      boolean taken = found.readable() && found.ban().isEmpty();
      read += taken ? 1 : 0;
      if (taken == entry.has("expect")) {
        surprises.add(line + " -> " + found.remarks() + found.ban());
      }
    }
    assertEquals(List.of(), surprises);
    assertTrue(read >= 1500, "enough reports to look at: " + read);
  }

  @Test
  void membersTryWhatOthersPostedBeforeThem() throws IOException {
    Map<String, JsonNode> before = new HashMap<>();
    int repeats = 0;
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      if (entry.has("repeatOf")) {
        JsonNode original = before.get(entry.get("repeatOf").asText());
        assertNotNull(original, () -> "no report before it: " + line);
        assertNotEquals(original.get("by"), entry.get("by"), line);
        assertEquals(original.get("process"), entry.get("process"), line);
        assertTrue(
            original.get("at").asText().compareTo(entry.get("at").asText()) <= 0, () -> line);
        repeats++;
      }
      before.put(entry.get("id").asText(), entry);
    }
    assertTrue(repeats >= 60, "repeats: " + repeats);
  }

  @Test
  void membersHaveMuchToSayMostlyInEveningsAndOnWeekendsAndLittleOnHolidays() throws IOException {
    Set<String> said = new HashSet<>();
    int weekends = 0;
    int holidays = 0;
    int nights = 0;
    int all = 0;
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      said.add(entry.path("notes").asText());
      OffsetDateTime at = OffsetDateTime.parse(entry.get("at").asText());
      weekends += at.getDayOfWeek().getValue() > 5 ? 1 : 0;
      holidays +=
          at.getMonthValue() == 12 && at.getDayOfMonth() >= 24 && at.getDayOfMonth() <= 26 ? 1 : 0;
      nights += at.getHour() < 7 ? 1 : 0;
      all++;
    }
    assertTrue(said.size() >= 500, "remarks: " + said.size());
    assertTrue(weekends * 5 > all * 2, weekends + " of " + all + " on weekends");
    assertTrue(holidays <= 3 && nights == 0, holidays + " at Christmas, " + nights + " at night");
  }

  @Test
  void whatIsDrawnOfAResultIsWhatItsAuthorSaw() throws IOException {
    int drawn = 0;
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      if (!entry.has("picture")) {
        continue;
      }
      JsonNode at = entry.get("picture").get("at");
      assertEquals(entry.has("trials") ? entry.get("trials").size() : 1, at.size(), line);
      for (int i = 0; i < at.size() && !entry.has("resultColour"); i++) {
        JsonNode trial = entry.has("trials") ? entry.get("trials").get(i) : entry;
        double place = at.get(i).doubleValue();
        String seen = place < -1 ? "too little" : place > 1 ? "too much" : "right";
        assertEquals(trial.get("effect").asText(), seen, line);
      }
      drawn++;
    }
    assertTrue(drawn >= 150, "pictures: " + drawn);
  }

  /** Nominal doses of right trials by member, of fibre marks on one metal in one colour. */
  private Map<String, List<Double>> marks(String metal, String colour) throws IOException {
    Map<String, MachineReader.Result> machines = machines();
    Map<String, List<Double>> doses = new TreeMap<>();
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      String by = entry.get("by").asText();
      Laser laser = machines.get(by + "/" + entry.get("machine").asText()).values().laser();
      Interpretation found =
          ReportInterpreter.read(Lines.report(entry), laser, CATALOG, NumberStyle.ANY);
      String slug = found.work() == null ? null : found.work().material().slug();
      boolean such =
          found.readable()
              && laser.source() == LaserSource.FIBRE
              && found.work().process() == Process.COLOUR_MARKING
              && metal.equals(CATALOG.vocabulary().respondsAs(TermKind.MATERIAL, slug))
              && colour.equals(found.work().word(WorkProperty.RESULT_COLOUR).slug());
      if (such) {
        found.trials().stream()
            .filter(trial -> trial.effect() == Effect.RIGHT)
            .map(trial -> trial.derived().arealDose())
            .forEach(dose -> doses.computeIfAbsent(by, key -> new ArrayList<>()).add(dose));
      }
    }
    return doses;
  }

  @ParameterizedTest
  @CsvSource({"titanium, gold purple blue", "stainless-steel, gold brown blue black"})
  void theColoursOfBareMetalRiseWithTheDoseAndHaveSeveralVoices(String metal, String colours)
      throws IOException {
    double before = 0;
    for (String colour : colours.split(" ")) {
      Map<String, List<Double>> doses = marks(metal, colour);
      assertTrue(doses.size() >= 5, colour + " by " + doses.keySet());
      double middle =
          doses.values().stream()
              .flatMap(List::stream)
              .mapToDouble(Math::log)
              .average()
              .orElseThrow();
      assertTrue(middle > before, colour + " above the colour before it");
      before = middle;
    }
  }

  @Test
  void everyCutHasAThicknessSomeOfThemReadOutOfTheMaterial() throws IOException {
    Map<String, MachineReader.Result> machines = machines();
    int typed = 0;
    for (String line : Files.readAllLines(CLUB.resolve("reports.jsonl"))) {
      JsonNode entry = JSON.readTree(line);
      Laser laser =
          machines
              .get(entry.get("by").asText() + "/" + entry.get("machine").asText())
              .values()
              .laser();
      Interpretation found =
          ReportInterpreter.read(Lines.report(entry), laser, CATALOG, NumberStyle.ANY);
      if (found.readable() && found.ban().isEmpty() && found.work().process() == Process.CUT) {
        assertNotNull(found.work().thicknessMm(), line);
        typed += entry.has("thickness") ? 0 : 1;
      }
    }
    assertTrue(typed >= 20, typed + " typed with the material");
  }

  static Map<String, MachineReader.Result> machines() throws IOException {
    Map<String, MachineReader.Result> machines = new HashMap<>();
    for (String line : Files.readAllLines(CLUB.resolve("machines.csv"))) {
      if (line.startsWith("#") || line.startsWith("owner;")) {
        continue;
      }
      String[] cells = line.split(";", -1);
      WrittenMachine written =
          new WrittenMachine(
              cells[1],
              null,
              new WrittenLaser(
                  cells[2],
                  Entries.text(cells[3]),
                  Entries.text(cells[4]),
                  cells[5],
                  cells[6],
                  Entries.text(cells[7]),
                  Entries.text(cells[8])),
              null,
              null,
              Entries.text(cells[11]),
              null,
              null);
      machines.put(cells[0] + "/" + cells[1], MachineReader.read(written, NumberStyle.ANY));
    }
    return machines;
  }

  /** Lines of the scenario as entries. */
  static final class Lines {
    static WrittenReport report(JsonNode n) {
      List<WrittenTrial> trials = new ArrayList<>();
      if (n.has("trials")) {
        n.get("trials").forEach(t -> trials.add(trial(t)));
      } else {
        trials.add(trial(n));
      }
      return new WrittenReport(
          UUID.nameUUIDFromBytes(n.get("machine").asText().getBytes()),
          null,
          work(n),
          trials,
          null,
          null);
    }

    private static WrittenWork work(JsonNode n) {
      WrittenWork work = WrittenWork.of(text(n, "process"));
      for (WorkProperty property : WorkProperty.values()) {
        String text = text(n, property.code());
        boolean quantity = property.value().shape() == Shape.QUANTITY;
        work = work.with(property, quantity ? Entries.text(text) : text);
      }
      return work;
    }

    private static WrittenTrial trial(JsonNode n) {
      JsonNode s = n.get("settings");
      WrittenSettings settings = WrittenSettings.NONE;
      for (Setting setting : Setting.values()) {
        settings = settings.with(setting, value(setting, s.get(setting.code())));
      }
      List<String> defects = new ArrayList<>();
      n.path("defects").forEach(d -> defects.add(d.asText()));
      return new WrittenTrial(
          n.has("row") ? n.get("row").intValue() : null,
          n.has("column") ? n.get("column").intValue() : null,
          settings,
          text(n, "effect"),
          n.has("quality") ? n.get("quality").intValue() : null,
          defects);
    }

    private static Object value(Setting setting, JsonNode n) {
      if (n == null) {
        return null;
      }
      return switch (setting.value().shape()) {
        case QUANTITY -> Entries.text(n.asText());
        case COUNT -> n.intValue();
        case FLAG -> n.booleanValue();
        case CHOICE -> n.asText();
      };
    }

    private static String text(JsonNode n, String field) {
      return n.has(field) ? n.get(field).asText() : null;
    }
  }
}
