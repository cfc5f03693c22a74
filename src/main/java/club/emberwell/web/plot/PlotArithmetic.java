package club.emberwell.web.plot;

import io.quarkus.qute.TemplateExtension;

/** Lets a drawing place things relative to each other; Qute itself only adds whole numbers. */
@TemplateExtension
final class PlotArithmetic {
  private PlotArithmetic() {}

  static double plus(double value, int more) {
    return Axis.round(value + more);
  }

  static double minus(double value, int less) {
    return Axis.round(value - less);
  }
}
