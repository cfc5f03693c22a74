package club.emberwell.talk;

/**
 * An entry as written: Markdown with its title and ties.
 *
 * @param title null for an answer
 * @param ties empty for an answer
 */
public record WrittenTalk(String title, String text, Ties ties) {
  public WrittenTalk {
    ties = ties == null ? Ties.NONE : ties;
  }

  public static WrittenTalk answer(String text) {
    return new WrittenTalk(null, text, Ties.NONE);
  }
}
