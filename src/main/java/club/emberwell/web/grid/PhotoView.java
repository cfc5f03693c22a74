package club.emberwell.web.grid;

import club.emberwell.grid.photo.Corners;
import club.emberwell.grid.photo.GridColours;
import club.emberwell.grid.photo.GridPhoto;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.photo.PhotoPlan;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.result.Results;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.DistancePlot;
import club.emberwell.web.plot.DistancePlot.Measured;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The page of a grid's photo.
 *
 * @param picture null = no photo yet
 * @param seen null = the corners are not marked yet
 */
record PhotoView(String id, String name, Picture picture, Seen seen) {
  /** What a photo is sent under. */
  public String upload() {
    return UUID.randomUUID().toString();
  }

  /** The photo as it was taken. */
  record Picture(String address, int width, int height) {}

  /**
   * What it shows.
   *
   * @param first whether the grid takes several blanks, of which this is the first
   * @param plot null where the bare surface or the doses are not known
   */
  record Seen(
      JudgingView.Photo flat, String bare, boolean first, List<Line> lines, DistancePlot plot) {}

  /**
   * One test.
   *
   * @param effect null = not judged
   */
  record Line(String href, String name, String crop, Judged effect, String distance, String lab) {}

  /** How it was judged. */
  record Judged(String shape, String word) {}

  static PhotoView of(
      Results results,
      Optional<GridPhoto> photo,
      Optional<GridColours> colours,
      UnitPreferences reader) {
    String id = results.grid().id().toString();
    return new PhotoView(
        id,
        results.grid().name(),
        photo
            .map(
                p ->
                    new Picture(
                        "/grids/%s/photo.jpg?v=%s".formatted(id, p.takenAt().toEpochMilli()),
                        p.width(),
                        p.height()))
            .orElse(null),
        colours.map(c -> seen(results, photo.orElseThrow(), c, reader)).orElse(null));
  }

  private static Seen seen(
      Results results, GridPhoto photo, GridColours colours, UnitPreferences reader) {
    GridPlan plan = results.plan();
    CellText text = new CellText(plan, reader);
    PhotoPlan lying = GridPhotos.lying(plan);
    List<Line> lines = new ArrayList<>();
    List<Measured> measured = new ArrayList<>();
    for (GridPlan.Cell cell : plan.cells()) {
      GridColours.Cell found = colours.of(cell.row(), cell.column()).orElse(null);
      if (!cell.burned() || found == null) {
        continue;
      }
      Effect effect =
          results.of(cell.row(), cell.column()).map(trial -> trial.effect()).orElse(null);
      String href =
          "/grids/%s/results#cell-%d-%d".formatted(results.grid().id(), cell.row(), cell.column());
      lines.add(
          new Line(
              href,
              text.name(cell),
              lying.crop(cell.row(), cell.column()),
              effect == null ? null : new Judged(TrialText.shape(effect), effect.label()),
              found.distance() == null ? "" : number(found.distance(), reader),
              lab(found, reader)));
      if (cell.dose() != null && found.distance() != null) {
        double dose = QuantityPrinter.value(cell.dose(), text.doseKind(), reader);
        measured.add(
            new Measured(cell.row(), dose, found.distance(), kind(effect), href, text.name(cell)));
      }
    }
    return new Seen(
        JudgingView.Photo.of(photo, lying),
        colours.bare() == null
            ? null
            : lab(new GridColours.Cell(0, 0, colours.bare(), null), reader),
        plan.layout().parts().blanks() > 1,
        lines,
        measured.size() < 2 ? null : plot(measured, text, reader));
  }

  private static DistancePlot plot(List<Measured> measured, CellText text, UnitPreferences reader) {
    return DistancePlot.of(
        new Caption(
            "distance",
            "Colour distance over energy (dose)",
            measured.size() + " tests. The table below has the numbers."),
        measured,
        "nominal " + QuantityPrinter.unitLabel(text.doseKind(), reader),
        dose -> QuantityPrinter.number(dose, reader.style()));
  }

  private static String kind(Effect effect) {
    if (effect == null) {
      return "none";
    }
    return switch (effect) {
      case TOO_LITTLE -> "little";
      case RIGHT -> "right";
      case TOO_MUCH -> "much";
    };
  }

  private static String lab(GridColours.Cell cell, UnitPreferences reader) {
    return "L %s, a %s, b %s"
        .formatted(
            number(cell.colour().l(), reader),
            number(cell.colour().a(), reader),
            number(cell.colour().b(), reader));
  }

  private static String number(double value, UnitPreferences reader) {
    return QuantityPrinter.number(Math.round(value * 10) / 10.0, reader.style());
  }

  /** Where the handles stand before anybody moved them. */
  static Corners corners(Optional<GridPhoto> photo) {
    return photo.map(GridPhoto::corners).orElse(Corners.START);
  }
}
