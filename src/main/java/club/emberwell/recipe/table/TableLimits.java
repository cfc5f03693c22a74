package club.emberwell.recipe.table;

/** Every limit of a table that is read in. */
public final class TableLimits {
  /** Characters: as much as fits into a body for a program with the rest. */
  public static final int CHARACTERS = 150_000;

  /** Rows below the header: half of what a member may have. */
  public static final int ROWS = 500;

  public static final int COLUMNS = 60;

  /** Characters of a unit beside a column. */
  public static final int UNIT = 20;

  private TableLimits() {}
}
