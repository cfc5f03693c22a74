package club.emberwell.web.card;

import club.emberwell.tag.QrCode;
import club.emberwell.web.caution.CautionsView;
import java.time.Instant;
import java.util.List;

/**
 * A job card as its page shows it.
 *
 * @param before what is gone through first
 * @param lies null = in no fixture
 */
record CardView(
    Head head,
    List<Check> before,
    Facts facts,
    Lying lies,
    Told told,
    CautionsView cautions,
    EyesView eyes,
    Sheet sheet) {

  /**
   * Which card it is.
   *
   * @param newest revision of the recipe
   * @param at when this one was written
   * @param machine its name with its laser, or its laser alone
   * @param room in which it is done, or null
   */
  record Head(
      String title,
      int version,
      int newest,
      Instant at,
      String process,
      String machine,
      String room) {
    /** Whether the recipe was changed since this card was printed. */
    public boolean isChanged() {
      return version < newest;
    }
  }

  /** A line to tick; own: of the recipe's owner. */
  record Check(String sentence, boolean own) {}

  /** What is worked on, and by which settings. */
  record Facts(List<Fact> blank, List<Fact> settings) {}

  /** The square that leads back to this revision, and what of the card stands on paper. */
  record Sheet(QrCode square, CardPaper paper) {}

  /** Something with its name. */
  record Fact(String label, String value) {}

  /**
   * Where the piece lies.
   *
   * @param kept where the fixture is kept, or null
   * @param position in words
   * @param photo its address, or null
   */
  record Lying(String name, String kept, String position, Photo photo) {}

  /** A picture. */
  record Photo(String src, int width, int height) {}

  /** What the owner wrote: steps in order, and notes or null. */
  record Told(List<String> steps, String notes) {}

  /**
   * What is calculated for the eyes.
   *
   * @param glasses those that stand best first
   * @param more how many other pairs there are
   * @param least what is needed, or why there is no number
   */
  record EyesView(
      List<Pair> glasses, int more, String least, List<String> warnings, String closing) {}

  /** A pair of glasses: how it stands to the machine and why. */
  record Pair(String name, String verdict, String because, boolean covered) {}

  /** Steps that paper has room for. */
  public List<String> getPrintedSteps() {
    return told.steps().subList(0, sheet.paper().steps());
  }

  /** The others: on the screen only. */
  public List<String> getFurtherSteps() {
    return told.steps().subList(sheet.paper().steps(), told.steps().size());
  }
}
