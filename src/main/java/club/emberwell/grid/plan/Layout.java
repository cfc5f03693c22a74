package club.emberwell.grid.plan;

import club.emberwell.grid.reading.Piece;
import club.emberwell.laser.Laser;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;

/**
 * How the cells lie on the blank; mm throughout, from its upper left corner.
 *
 * @param cell side of a cell
 * @param gap between cells
 * @param width of the whole with labels and margins, on the fullest blank
 * @param height the same, with the line for the tag
 * @param parts how it is divided where one blank has no room for all
 * @param room where it may lie
 */
public record Layout(double cell, double gap, double width, double height, Parts parts, Room room) {
  /** Left and right, above and below of all that is burned (own rules, no source). */
  public static final double MARGIN = 2;

  /** Room for what is written left of the rows. */
  public static final double LEFT = 10;

  /** Room for what is written above the columns. */
  public static final double TOP = 4;

  /** Room for the tag below. */
  public static final double TAG = 5;

  /**
   * Where a grid may lie on one blank.
   *
   * @param width null = as much as it takes
   * @param height null = as much as it takes
   * @param why a sentence about how the width follows from a round piece; null = it is flat
   */
  public record Room(Double width, Double height, String why) {
    static Room on(Piece piece, Laser laser) {
      if (piece.diameter() == null) {
        return new Room(piece.width(), piece.height(), null);
      }
      double most =
          piece.rotary()
              ? RoundPiece.around(piece.diameter())
              : RoundPiece.across(piece.diameter(), laser);
      Double width = piece.width() == null ? Double.valueOf(most) : Math.min(most, piece.width());
      return new Room(width, piece.height(), RoundPiece.why(piece.rotary(), laser));
    }
  }

  /**
   * Rows and columns that fit on one blank.
   *
   * @param blanks how many it takes
   */
  public record Parts(int columns, int rows, int blanks) {}

  /**
   * @throws EntryRefused where not even one cell fits
   */
  static Layout of(Piece piece, Laser laser, int columns, int rows) {
    Room room = Room.on(piece, laser);
    int wide = fit(piece, room.width(), LEFT, columns, "width");
    int high = fit(piece, room.height(), TOP + TAG, rows, "height");
    int blanks = parts(columns, wide) * parts(rows, high);
    return new Layout(
        piece.cell(),
        piece.gap(),
        span(piece, wide) + LEFT + 2 * MARGIN,
        span(piece, high) + TOP + TAG + 2 * MARGIN,
        new Parts(wide, high, blanks),
        room);
  }

  private static int parts(int all, int each) {
    return (all + each - 1) / each;
  }

  private static double span(Piece piece, int cells) {
    return cells * piece.cell() + (cells - 1) * piece.gap();
  }

  private static int fit(Piece piece, Double room, double beside, int wanted, String side) {
    if (room == null) {
      return wanted;
    }
    double free = room - beside - 2 * MARGIN;
    int fits = (int) Math.floor((free + piece.gap()) / (piece.cell() + piece.gap()) + 1e-9);
    if (fits < 1) {
      String detail =
          "One test with its labels needs %.1f mm of %s, but there are %.1f mm. Take smaller cells or a larger piece."
              .formatted(piece.cell() + beside + 2 * MARGIN, side, room);
      String field = side.equals("width") && piece.diameter() != null ? "diameter" : side;
      throw new EntryRefused(RemarkId.BLANK_TOO_SMALL, "/blank/" + field, detail);
    }
    return Math.min(wanted, fits);
  }

  /** Left edge of a column's cells on its blank. */
  public double x(int column) {
    return MARGIN + LEFT + column % parts.columns() * (cell + gap);
  }

  /** Upper edge of a row's cells on its blank. */
  public double y(int row) {
    return MARGIN + TOP + row % parts.rows() * (cell + gap);
  }

  /** On which blank a cell lies, from 0. */
  public int blank(int row, int column, int columns) {
    return row / parts.rows() * parts(columns, parts.columns()) + column / parts.columns();
  }
}
