package club.emberwell.web.sample;

import club.emberwell.web.caution.MarkView;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A sample as its owner sees it.
 *
 * @param kept box and place in one line, empty where nobody said
 * @param shows the report or grid, null where it shows none or that has gone
 */
record SampleCard(
    UUID id, int version, String code, String title, String kept, String notes, Shows shows) {
  /**
   * What a sample shows.
   *
   * @param kind in a word: report, or test grid
   * @param work empty where only the machine is known
   * @param machine name of the machine and its laser
   * @param settings of a single trial, else how many tests there are
   * @param result of a single trial, empty for others
   * @param mark heaviest caution of the work, or null
   * @param keep a form for a recipe with these settings, or where one test is chosen; or null
   */
  record Shows(
      String href,
      String kind,
      String work,
      String machine,
      String settings,
      String result,
      @Nullable MarkView mark,
      String keep) {}
}
