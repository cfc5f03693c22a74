package club.emberwell.grid.next;

import club.emberwell.grid.Grid;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.remark.Coded;
import club.emberwell.stats.Interval;
import java.util.List;
import java.util.Optional;

/**
 * What to burn next on the machine of a grid. Doses in the canonical unit of the work.
 *
 * @param window from which dose to which it is right on this machine, by now; empty where nothing
 *     can be said of it
 * @param tests to burn together, least dose first; empty where none can be proposed
 * @param next a grid of just these tests; empty without tests
 * @param said in sentences, what matters first
 */
public record Proposal(
    Grid grid,
    Process process,
    Optional<Known> window,
    List<Test> tests,
    Optional<WrittenGrid> next,
    List<String> said) {
  public Proposal {
    tests = List.copyOf(tests);
    said = List.copyOf(said);
  }

  /**
   * Both ends of the window.
   *
   * @param basis what was known before the tests of this grid
   * @param tests judged that count
   * @param narrower what the uncertainty of the ends is expected to become by the next tests, as a
   *     share of what it is now, 0 to 1; 1 where none can be proposed
   */
  public record Known(Edge lower, Edge upper, Basis basis, int tests, double narrower) {}

  /**
   * One end.
   *
   * @param interval 95 %
   */
  public record Edge(double dose, Interval interval) {}

  /** A test to burn. */
  public record Test(Settings settings, double dose, double chance) {}

  /** What was known before the tests of this grid. */
  public enum Basis implements Coded {
    MEMBERS("members", "the window of other members"),
    GUESS("guess", "a wide guess");

    private final String code;
    private final String words;

    Basis(String code, String words) {
      this.code = code;
      this.words = words;
    }

    @Override
    public String code() {
      return code;
    }

    public String words() {
      return words;
    }
  }
}
