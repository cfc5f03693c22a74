package club.emberwell.talk;

/**
 * An entry as written: Markdown (of a comment plain text) with its title and ties.
 *
 * @param title null for an answer or a comment
 * @param ties empty for an answer or a comment
 */
public record WrittenTalk(String title, String text, Ties ties) {
  public WrittenTalk {
    ties = ties == null ? Ties.NONE : ties;
  }

  public static WrittenTalk untitled(String text) {
    return new WrittenTalk(null, text, Ties.NONE);
  }
}
