package club.emberwell.web.answer;

import club.emberwell.report.photo.Photo;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.plot.BandLine;
import club.emberwell.web.plot.DosePlot;
import java.util.List;

/**
 * The answer as a panel shows it.
 *
 * @param plot null where nobody did exactly this, or no trial states a dose
 * @param cautions of the work
 */
public record AnswerView(
    Head head,
    Start start,
    Evidence evidence,
    Drawn plot,
    Wholes wholes,
    CautionsView cautions,
    Folds folds,
    Others others) {

  /** The answer in a line, for those who see no more of it. */
  public String getDescription() {
    return "%s, %s, %s: %s. %s"
        .formatted(head.work(), head.process(), head.laser(), start.title(), evidence.counts());
  }

  /**
   * What is answered, and for which machine.
   *
   * @param id unique in the page
   * @param laser the machine in words, or null
   * @param form what changes it; null where there is none to change to
   */
  public record Head(
      String id, String work, String process, String machine, String laser, Form form) {}

  /**
   * Changes the machine in place.
   *
   * @param action the page it stands on
   * @param hidden what the form carries along
   */
  public record Form(
      String action, String name, List<QueryString.Pair> hidden, List<Option> machines) {}

  /**
   * The sentence that answers.
   *
   * @param title "Start at 60 % · 22 mm/s", or why there is no start
   * @param settings the whole alone, to be copied; null where there is none
   * @param said what follows, in sentences
   * @param before what was right on this machine already, or null
   * @param post where a result is posted with these settings; null where it cannot be
   * @param keep where they become a recipe on the reader's bench; null where it cannot be
   * @param plan where a test grid round it is planned; null where it cannot be
   */
  public record Start(
      String title,
      String settings,
      List<String> said,
      Before before,
      String post,
      String keep,
      String plan) {}

  /** The reader's own right result. */
  public record Before(String settings, String href) {}

  /**
   * How sure it is.
   *
   * @param why what makes it only a rough start
   * @param mend address of the page that would mend it, or null
   */
  public record Evidence(String word, String style, String counts, List<String> why, String mend) {}

  /**
   * The picture, and the same as a table.
   *
   * @param counts the trials behind it
   * @param moved that its curve is for the reader's machine, or null
   * @param unit of the doses
   */
  public record Drawn(DosePlot plot, String counts, String moved, String unit, List<Row> rows) {}

  /** One trial of the table. */
  public record Row(String dose, String effect, String href, String member, boolean aside) {}

  /** Whole settings of others. */
  public record Wholes(String title, List<Whole> list) {
    public Whole getFirst() {
      return list.get(0);
    }

    public List<Whole> getMore() {
      return list.subList(1, list.size());
    }
  }

  /**
   * Settings that worked for one member.
   *
   * @param work what it was done on, where it is not just this; else null
   * @param repeat where "I tried this" leads; null for strangers
   * @param keep where they become a recipe on the reader's bench; null for strangers
   * @param photo how it came out, or null
   */
  public record Whole(
      String settings,
      String href,
      String by,
      String result,
      String work,
      String repeat,
      String keep,
      Photo photo) {
    /** Which of several it is, for whoever only hears it. */
    public String getNamed() {
      return settings + ", " + by;
    }
  }

  /**
   * What is folded away.
   *
   * @param differences what makes a difference, the clear first
   * @param more address of everything, or null on that page itself
   */
  public record Folds(
      List<Setting> settings, String difference, List<String> differences, String more) {}

  /** A single setting. */
  public record Setting(String label, String about, String spread, BandLine strip) {}

  /**
   * What else the search meets.
   *
   * @param choose whether the reader has not said yet which laser they have
   */
  public record Others(boolean choose, List<Way> lasers) {}

  /** Another kind of laser for the same work. */
  public record Way(String label, String href) {}
}
