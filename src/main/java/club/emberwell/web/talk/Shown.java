package club.emberwell.web.talk;

import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Preview;

/** The lists of talk, each with its address. */
enum Shown {
  QUESTIONS("/ask", null, "Latest activity"),
  UNANSWERED("/ask", "unanswered", "Unanswered"),
  NOTICES("/notices", null, "Notices");

  private final String path;
  private final String code;
  private final String label;

  Shown(String path, String code, String label) {
    this.path = path;
    this.code = code;
    this.label = label;
  }

  String path() {
    return path;
  }

  /** What stands for it behind {@code show=}; null for a list with a path of its own. */
  String code() {
    return code;
  }

  /**
   * @param found where words were looked for the closest stand first, not the latest
   */
  String label(boolean found) {
    return this == QUESTIONS && found ? "All questions" : label;
  }

  /** What others are told of this list; its first page with all there is may be found. */
  Preview preview(String text, int page, String description) {
    String all = address(text);
    String at = page == 0 ? all : all + (all.contains("?") ? "&" : "?") + "page=" + page;
    return Preview.of(at, description).listedIf(at.equals(path));
  }

  /**
   * @param text what is looked for; empty = nothing
   */
  String address(String text) {
    String words = text.isEmpty() ? "" : "q=" + QueryString.encoded(text);
    String only = code == null ? "" : "show=" + code;
    String both = words.isEmpty() || only.isEmpty() ? words + only : words + "&" + only;
    return both.isEmpty() ? path : path + "?" + both;
  }
}
