package club.emberwell.web.eyewear;

import club.emberwell.bench.Machine;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.eyewear.Glasses;
import club.emberwell.laser.safety.Coverage;
import club.emberwell.laser.safety.Coverage.Cover;

/**
 * How a pair of glasses stands to a machine, as a line.
 *
 * @param name of the other one: of the glasses on a machine's page, of the machine on the glasses'
 * @param path where that one is
 * @param verdict in the words everybody knows
 * @param because both numbers, or what is missing
 * @param look the class of the stylesheet
 */
record FitLine(String name, String path, String verdict, String because, String look) {
  /** On a machine's page. */
  static FitLine of(EyeProtection.Fit fit) {
    Glasses glasses = fit.glasses();
    return line(glasses.name(), "/eyewear/" + glasses.id(), fit.coverage());
  }

  /** On the page of the glasses. */
  static FitLine of(Machine machine, Coverage coverage) {
    return line(machine.name(), "/eyewear/machines/" + machine.id(), coverage);
  }

  private static FitLine line(String name, String path, Coverage coverage) {
    return new FitLine(
        name, path, coverage.verdict().label(), coverage.because(), look(coverage.verdict()));
  }

  private static String look(Cover verdict) {
    return switch (verdict) {
      case NOT_COVERED, BELOW_MINIMUM -> "box-danger";
      case NO_NUMBER -> "box-warn";
      case COVERED -> "box-note";
    };
  }
}
