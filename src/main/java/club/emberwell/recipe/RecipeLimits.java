package club.emberwell.recipe;

/** Every limit of a recipe but those of its work and settings, which the reading has. */
public final class RecipeLimits {
  public static final int PER_MEMBER = 1_000;

  /** Revisions of one recipe: as many as a history reads. */
  public static final int REVISIONS = 1_000;

  /** Characters of a name. */
  public static final int NAME = 80;

  /** Characters of the name of a folder. */
  public static final int FOLDER = 60;

  /** Steps of a job; one page has to hold them. */
  public static final int STEPS = 30;

  /** Characters of a step: three lines of a page. */
  public static final int STEP = 240;

  /** Characters of a search. */
  public static final int SEARCH = 200;

  /** Words of a search that count. */
  static final int SEARCH_WORDS = 8;

  /** Recipes on one page of the list. */
  public static final int PAGE = 30;

  private RecipeLimits() {}
}
