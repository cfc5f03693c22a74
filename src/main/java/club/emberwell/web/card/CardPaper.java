package club.emberwell.web.card;

import club.emberwell.web.card.CardView.Check;
import club.emberwell.web.card.CardView.EyesView;
import club.emberwell.web.card.CardView.Fact;
import club.emberwell.web.card.CardView.Lying;
import club.emberwell.web.card.CardView.Told;
import club.emberwell.web.caution.CautionView;
import club.emberwell.web.caution.CautionsView;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * What of a card stands on one page of A4 or US Letter, reckoned in lines of half its width. What
 * is gone through, the settings, the cautions and the eyes are always whole; where a card is too
 * long, letters get smaller, then the photo, the notes and the last steps stay on the screen, and
 * the page says so.
 *
 * @param tight whether it has the smaller letters
 * @param photo whether the photo of the fixture stands there
 * @param notes whether the notes do
 * @param steps how many of them do
 * @param leftOut in words; empty where all is there
 */
record CardPaper(boolean tight, boolean photo, boolean notes, int steps, String leftOut) {
  /** Lines of the lower page, which is Letter's, less the head, in letters of 9 pt. */
  private static final int ROOMY = 104;

  /** The same in letters of 7.5 pt. */
  private static final int TIGHT = 138;

  /** Characters that a line of such letters holds for sure. */
  private static final int WIDE = 52;

  private static final int WIDER = 62;

  /** Lines of a photo as high as it is printed. */
  private static final int PHOTO = 9;

  /** Lines that a heading takes with the space round it. */
  private static final int HEADING = 2;

  /** What a card has to say. */
  record Parts(
      List<Check> before,
      List<List<Fact>> facts,
      Lying lies,
      Told told,
      CautionsView cautions,
      EyesView eyes) {}

  static CardPaper of(Parts parts) {
    boolean photo = parts.lies() != null && parts.lies().photo() != null;
    int steps = parts.told().steps().size();
    CardPaper all = new CardPaper(false, photo, true, steps, "");
    if (all.lines(parts) <= ROOMY) {
      return all;
    }
    CardPaper small = new CardPaper(true, photo, true, steps, "");
    if (small.lines(parts) > TIGHT) {
      small = new CardPaper(true, false, true, steps, "");
    }
    if (small.lines(parts) > TIGHT) {
      small = new CardPaper(true, false, false, steps, "");
    }
    while (small.lines(parts) > TIGHT && small.steps > 0) {
      small = new CardPaper(true, false, false, small.steps - 1, "");
    }
    return small.saying(parts, photo);
  }

  private int lines(Parts parts) {
    int lines = texts(parts.before().stream().map(Check::sentence).toList()) + HEADING;
    for (List<Fact> facts : parts.facts()) {
      lines += HEADING + facts.stream().mapToInt(this::fact).sum();
    }
    if (parts.lies() != null) {
      lines += HEADING + 3 + (photo ? PHOTO : 0);
    }
    if (steps > 0) {
      lines += HEADING + texts(parts.told().steps().subList(0, steps));
    }
    if (notes && parts.told().notes() != null) {
      lines += HEADING + texts(parts.told().notes().lines().toList());
    }
    return lines + cautions(parts.cautions()) + eyes(parts.eyes());
  }

  private int cautions(CautionsView cautions) {
    // the closing sentence takes three more
    return HEADING + 3 + cautions.all().mapToInt(this::caution).sum();
  }

  private int caution(CautionView one) {
    return text(one.title() + " " + one.advice()) + 1;
  }

  private int eyes(EyesView eyes) {
    List<String> said = new ArrayList<>(eyes.warnings());
    eyes.glasses()
        .forEach(pair -> said.add(pair.name() + ": " + pair.verdict() + ". " + pair.because()));
    said.add(eyes.least());
    said.add(eyes.closing());
    return HEADING + texts(said) + 1;
  }

  private int fact(Fact fact) {
    // a label takes two fifths of the line
    return Math.max(1, (int) Math.ceil(fact.value().length() / (0.6 * wide())));
  }

  private int texts(Collection<String> texts) {
    return texts.stream().mapToInt(this::text).sum();
  }

  private int text(String text) {
    return Math.max(1, (text.length() + wide() - 1) / wide());
  }

  private int wide() {
    return tight ? WIDER : WIDE;
  }

  private CardPaper saying(Parts parts, boolean hadPhoto) {
    List<String> left = new ArrayList<>();
    int all = parts.told().steps().size();
    if (steps < all) {
      left.add(steps + 1 == all ? "step " + all : "steps %d to %d".formatted(steps + 1, all));
    }
    if (!notes && parts.told().notes() != null) {
      left.add("the notes");
    }
    if (!photo && hadPhoto) {
      left.add("the photo of the fixture");
    }
    String said =
        left.isEmpty()
            ? ""
            : "Not on this page: %s. The square opens all of it."
                .formatted(String.join(", ", left));
    return new CardPaper(tight, photo, notes, steps, said);
  }
}
