package club.emberwell.web.talk;

import club.emberwell.talk.TalkService;

/**
 * Where the pages beside this one are.
 *
 * @param newer address or null
 * @param older address or null
 */
record Pager(String newer, String older) {
  /**
   * @param base address of the first page, with or without a question mark in it
   */
  static Pager of(int page, boolean more, String base) {
    return new Pager(
        page > 0 ? address(base, page - 1) : null, more ? address(base, page + 1) : null);
  }

  static Pager of(TalkService.Page page, String base) {
    return of(page.page(), page.more(), base);
  }

  private static String address(String base, int page) {
    return page == 0 ? base : base + (base.contains("?") ? "&" : "?") + "page=" + page;
  }

  /** The page in an address; the first for whatever is none. */
  static int number(String text) {
    return text != null && text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0;
  }
}
