package club.emberwell.search.column;

/** Names of the doc-value columns that every trial fills. */
public final class Columns {
  public static final String REPORT = "n_report";
  public static final String MEMBER = "n_member";
  public static final String MACHINE = "n_machine";
  public static final String TRIAL = "n_trial";
  public static final String VERSION = "n_version";
  public static final String CREATED = "n_created";
  public static final String CODES = "n_codes";
  public static final String ID_HIGH = "n_idHigh";
  public static final String ID_LOW = "n_idLow";

  /** The report's id as an indexed term. */
  public static final String ID = "id";

  public static final String LENS = "p_lens";

  /** Words of the work that no moderator has filed yet. */
  public static final String UNFILED = "p_unfiled";

  private Columns() {}
}
