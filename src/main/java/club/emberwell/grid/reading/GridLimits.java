package club.emberwell.grid.reading;

import club.emberwell.quantity.Bounds;

/** Every limit of a test grid, in one place. Bounds are inclusive. */
public final class GridLimits {
  /** Values on one axis. */
  public static final int SIDE = 20;

  /** Tests in one grid; as many trials fit into its report. */
  public static final int CELLS = SIDE * SIDE;

  /** Fewest tests that are a grid. */
  public static final int FEWEST = 2;

  public static final int NAME = 80;

  /** Grids one member may keep; withdrawn ones count. */
  public static final int PER_MEMBER = 2000;

  /** Grids on one page of the list. */
  public static final int PAGE = 20;

  /** Side of a cell, mm: smaller ones cannot be judged by eye. */
  public static final Bounds CELL_MM = new Bounds(1, 50);

  public static final Bounds GAP_MM = new Bounds(0, 50);
  public static final Bounds BLANK_MM = new Bounds(2, 5000);
  public static final Bounds ACCELERATION_MM_S2 = new Bounds(1, 1_000_000);
  public static final Bounds OVERSCAN_MM = new Bounds(0, 200);

  /** Wanted ratio between neighbouring doses. */
  public static final Bounds RESOLUTION = new Bounds(1.02, 3);

  /** What is taken where nothing is said (own rules, no source). */
  public static final double USUAL_CELL_MM = 8;

  public static final double USUAL_GAP_MM = 2;
  public static final double USUAL_RESOLUTION = 1.15;

  private GridLimits() {}
}
