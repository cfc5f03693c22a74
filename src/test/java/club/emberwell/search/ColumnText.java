package club.emberwell.search;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.laser.Settings;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.TrialSnapshot;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.column.TrialColumns.Measure;
import club.emberwell.search.column.TrialColumns.Property;
import java.util.ArrayList;
import java.util.List;

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
    for (Measure measure : Measure.values()) {
      said.add(measure + "=" + columns.values(measure)[i]);
    }
    for (Property property : Property.values()) {
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
    for (Measure measure : Measure.values()) {
      Double value = value(measure, report, trial.trial());
      said.add(measure + "=" + (value == null ? Double.NaN : value));
    }
    for (Property property : Property.values()) {
      String label = label(property, report, trial.trial().settings());
      said.add(property + "=" + (label == null ? "not given" : label));
    }
    return said.toString();
  }

  private static Double value(Measure measure, ReportSnapshot report, TrialSnapshot trial) {
    Settings settings = trial.settings();
    return switch (measure) {
      case POWER_PERCENT -> settings.powerPercent();
      case POWER_W -> trial.derived().averagePowerW();
      case SPEED -> settings.speedMmS();
      case LINE_SPACING -> settings.lineSpacingMm();
      case PASSES -> settings.passes() == null ? 1.0 : (double) settings.passes();
      case REPETITION_RATE -> settings.repetitionRateKhz();
      case PULSE_DURATION -> settings.pulseDurationNs();
      case FOCUS_OFFSET -> settings.focusOffsetMm();
      case AREAL_DOSE -> trial.derived().arealDose();
      case LINE_DOSE -> trial.derived().lineDose();
      case PEAK_FLUENCE -> trial.derived().peakFluence();
      case BEAM_DIAMETER -> report.laser().beamDiameterUm();
      case RATED_POWER -> report.laser().ratedPowerW();
      case THICKNESS -> report.work().thicknessMm();
      case QUALITY -> trial.quality() == null ? null : (double) trial.quality();
      case POSTED -> (double) (report.createdAt().getEpochSecond() / 86_400);
    };
  }

  private static String label(Property property, ReportSnapshot report, Settings settings) {
    return switch (property) {
      case AIR_ASSIST -> onOff(settings.airAssist());
      case DIRECTION -> settings.direction() == null ? null : settings.direction().label();
      case CROSS_PASS -> onOff(settings.crossPass());
      case LENS -> lens(report.laser().lensFocalMm());
      case MATERIAL -> term(TermKind.MATERIAL, report.work().material().slug());
      case COATING -> term(TermKind.COATING, report.work().coating().slug());
      case COLOUR -> term(TermKind.COLOUR, report.work().colour().slug());
      case LOT -> report.particulars().lot();
      case CONTROLLER_VERSION -> report.particulars().controllerVersion();
      case MOTION -> report.laser().motion().label();
      case POWER_BASIS -> "given in %";
    };
  }

  private static String onOff(Boolean value) {
    return value == null ? null : value ? "on" : "off";
  }

  private static String lens(Double focal) {
    return focal == null ? null : focal.toString().replaceAll("\\.0$", "") + " mm";
  }

  private static String term(TermKind kind, String slug) {
    return slug == null ? null : SearchFixture.WORDS.term(kind, slug).map(Term::label).orElse(slug);
  }
}
