package club.emberwell.search;

import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.Settings;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** All that a trial's columns say, as one text: from the columns and from the report. */
final class ColumnText {
  private ColumnText() {}

  static String of(TrialColumns columns, int i) {
    List<Object> said = new ArrayList<>();
    said.add(columns.report()[i]);
    said.add(columns.member()[i]);
    said.add(columns.machine()[i]);
    said.add((int) columns.process()[i]);
    said.add((int) columns.band()[i]);
    said.add((int) columns.regime()[i]);
    said.add((int) columns.effect()[i]);
    for (Measure measure : Measure.all()) {
      said.add(measure + "=" + columns.values(measure)[i]);
    }
    for (Property property : Property.all()) {
      int code = columns.property(property)[i];
      said.add(property + "=" + columns.labels().label(property, code));
    }
    return said.toString();
  }

  static String of(SlowSearch.Trial trial) {
    ReportSnapshot report = trial.report();
    List<Object> said = new ArrayList<>();
    said.add(report.number());
    said.add(report.author().number());
    said.add(report.machine().number());
    said.add(report.process().ordinal());
    said.add(report.laser().band().ordinal());
    said.add(report.laser().regime().ordinal());
    said.add(trial.trial().effect().ordinal());
    for (Measure measure : Measure.all()) {
      Double value = value(measure, report, trial.trial());
      said.add(measure + "=" + (value == null ? Double.NaN : value));
    }
    for (Property property : Property.all()) {
      String label = label(property, report, trial.trial().settings());
      said.add(property + "=" + (label == null ? "not given" : label));
    }
    return said.toString();
  }

  private static Double value(Measure measure, ReportSnapshot report, TrialSnapshot trial) {
    Settings settings = trial.settings();
    return switch (measure.code()) {
      case "powerPercent" -> settings.powerPercent();
      case "power" -> trial.derived().averagePowerW();
      case "passes" -> (double) settings.passes();
      case "arealDose" -> trial.derived().arealDose();
      case "lineDose" -> trial.derived().lineDose();
      case "peakFluence" -> trial.derived().peakFluence();
      case "beamDiameter" -> report.laser().beamDiameterUm();
      case "ratedPower" -> report.laser().ratedPowerW();
      case "thickness" -> report.work().thicknessMm();
      case "wavelength" -> report.laser().wavelengthNm();
      case "quality" -> trial.quality() == null ? null : (double) trial.quality();
      case "posted" -> (double) (report.createdAt().getEpochSecond() / 86_400);
      default -> settings.number(Setting.of(measure.code()).orElseThrow());
    };
  }

  private static String label(Property property, ReportSnapshot report, Settings settings) {
    return switch (property.code()) {
      case "unfiled" -> unfiled(report.work());
      case "lens" -> lens(report.laser().lensFocalMm());
      case "material" -> term(TermKind.MATERIAL, report.work().material().slug());
      case "coating" -> term(TermKind.COATING, report.work().coating().slug());
      case "colour" -> term(TermKind.COLOUR, report.work().word(WorkProperty.COLOUR).slug());
      case "resultColour" ->
          term(TermKind.COLOUR, report.work().word(WorkProperty.RESULT_COLOUR).slug());
      case "thickness" -> thickness(report.work().thicknessMm());
      case "supplier" -> report.work().text(WorkProperty.SUPPLIER);
      case "lot" -> report.work().text(WorkProperty.LOT);
      case "controllerVersion" -> report.work().text(WorkProperty.CONTROLLER_VERSION);
      case "motion" -> report.laser().motion().label();
      case "powerBasis" -> "given in %";
      default -> given(settings, Setting.of(property.code()).orElseThrow());
    };
  }

  private static String given(Settings settings, Setting setting) {
    Object value = settings.values().get(setting);
    return value instanceof Boolean flag
        ? onOff(flag)
        : setting.value().choice(value).map(Choice::label).orElse(null);
  }

  private static String onOff(Boolean value) {
    return value == null ? null : value ? "on" : "off";
  }

  private static String unfiled(Work work) {
    String words =
        WorkProperty.of(Shape.WORD).stream()
            .map(work::word)
            .filter(word -> word.slug() == null && word.written() != null)
            .map(word -> Folding.withoutThickness(word.written()))
            .map(text -> String.join(" ", SearchFixture.WORDS.folding().words(text)))
            .collect(Collectors.joining(" / "));
    return words.isEmpty() ? null : words;
  }

  private static String thickness(Double mm) {
    return mm == null ? null : ThicknessClass.of(mm).orElseThrow().label();
  }

  private static String lens(Double focal) {
    return focal == null ? null : focal.toString().replaceAll("\\.0$", "") + " mm";
  }

  private static String term(TermKind kind, String slug) {
    return slug == null ? null : SearchFixture.WORDS.term(kind, slug).map(Term::label).orElse(slug);
  }
}
