package club.emberwell.grid.photo;

import club.emberwell.catalog.Ciede2000;
import club.emberwell.catalog.Lab;
import club.emberwell.grid.photo.PhotoPlan.Area;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The colours of a grid's cells in its photo, and how far each is from the bare surface. An aid to
 * the eye: light, camera and shine change every colour of a photo.
 *
 * @param bare of the surface between the cells, or round them where they touch; null where it is
 *     not in the photo
 * @param cells row by row
 */
public record GridColours(Lab bare, List<Cell> cells) {
  /** Of a cell's side that is left out along each edge, as edges burn differently. */
  private static final double CELL_MARGIN = 0.2;

  private static final double GAP_MARGIN = 0.25;

  /** Of a cell's side that counts as bare round the grid where there are no gaps. */
  private static final double ROUND = 0.25;

  /**
   * One cell.
   *
   * @param colour its mean
   * @param distance CIEDE2000 from the bare surface; null where that is not in the photo
   */
  public record Cell(int row, int column, Lab colour, Double distance) {}

  /** One cell; empty where it is not in the photo. */
  public Optional<Cell> of(int row, int column) {
    return cells.stream().filter(c -> c.row() == row && c.column() == column).findFirst();
  }

  /** Reads a picture whose corners have no {@link Corners#fault}. */
  public static GridColours of(BufferedImage picture, Corners corners, PhotoPlan plan) {
    FlatView view = new FlatView(picture, corners, plan);
    Lab bare = view.mean(bare(plan, view.step()));
    List<Cell> cells = new ArrayList<>();
    for (int row = 0; row < plan.rows(); row++) {
      for (int column = 0; column < plan.columns(); column++) {
        Lab colour = view.mean(List.of(plan.area(row, column).within(CELL_MARGIN)));
        Double distance =
            bare == null || colour == null ? null : Ciede2000.difference(bare, colour);
        cells.add(new Cell(row, column, colour, distance));
      }
    }
    return new GridColours(bare, cells);
  }

  /** The gaps between cells without their edges; the frame round all where a gap has no width. */
  private static List<Area> bare(PhotoPlan plan, double pixel) {
    List<Area> bare = new ArrayList<>();
    double pitch = plan.cell() + plan.gap();
    if (plan.gap() >= 2 * pixel) {
      for (int row = 1; row < plan.rows(); row++) {
        bare.add(new Area(0, row * pitch - plan.gap(), plan.width(), row * pitch));
      }
      for (int column = 1; column < plan.columns(); column++) {
        bare.add(new Area(column * pitch - plan.gap(), 0, column * pitch, plan.height()));
      }
    }
    if (bare.isEmpty()) {
      double round = ROUND * plan.cell();
      bare.add(new Area(0, -round, plan.width(), 0));
      bare.add(new Area(0, plan.height(), plan.width(), plan.height() + round));
      bare.add(new Area(-round, 0, 0, plan.height()));
      bare.add(new Area(plan.width(), 0, plan.width() + round, plan.height()));
    }
    return bare.stream().map(area -> area.within(GAP_MARGIN)).toList();
  }
}
