package club.emberwell.web.lot;

import club.emberwell.lot.order.Order;
import club.emberwell.lot.order.Order.Line;
import club.emberwell.lot.order.Order.Usable;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * The answer in words.
 *
 * @param order "Order 28 navy and 14 black."
 * @param chance how often such an order is enough
 * @param from where the usable share comes from
 * @param how it was computed
 */
record OrderText(String order, String chance, List<Row> rows, String from, String how) {
  private static final double PERCENT = 100;

  /** One line as a row of a table; expected is rounded to whole pieces. */
  record Row(String name, int order, int pieces, int tests, long expected, String chance) {}

  static OrderText of(Order order) {
    return new OrderText(
        sentence(order.lines()),
        chance(order),
        IntStream.range(0, order.lines().size())
            .mapToObj(i -> row(order.lines().get(i), i, order.lines().size()))
            .toList(),
        from(order.usable()),
        how(order));
  }

  private static String sentence(List<Line> lines) {
    List<String> each =
        IntStream.range(0, lines.size())
            .mapToObj(i -> lines.get(i).order() + " " + name(lines.get(i), i, lines.size()))
            .toList();
    int last = each.size() - 1;
    return "Order "
        + (last == 0
            ? each.get(0)
            : String.join(", ", each.subList(0, last)) + " and " + each.get(last))
        + ".";
  }

  private static String name(Line line, int at, int of) {
    if (line.name() != null) {
      return line.name();
    }
    return of == 1 ? "pieces" : "of colour " + (at + 1);
  }

  private static Row row(Line line, int at, int of) {
    return new Row(
        name(line, at, of),
        line.order(),
        line.pieces(),
        line.tests(),
        Math.round(line.expected()),
        percent(line.chance()));
  }

  private static String chance(Order order) {
    String enough =
        order.lines().size() == 1
            ? "enough pieces are usable"
            : "enough of every colour are usable";
    return "In %s such orders %s (%s)."
        .formatted(often(order.wanted()), enough, percent(order.chance()));
  }

  /** "at least 9 of 10"; 19 of 20 where ten are too few to say it, and so on. */
  private static String often(double chance) {
    for (int of : new int[] {10, 20, 100, 1000}) {
      double times = chance * of;
      if (Math.abs(times - Math.rint(times)) < 1e-9) {
        return "at least %d of %d".formatted(Math.round(times), of);
      }
    }
    return "at least " + percent(chance) + " of";
  }

  /** Rounded down, so that it is never said to be more than it is. */
  private static String percent(double chance) {
    double shown = Math.floor(chance * PERCENT * 10) / 10;
    return shown == Math.rint(shown)
        ? "%d %%".formatted(Math.round(shown))
        : String.format(Locale.ROOT, "%.1f %%", shown);
  }

  private static String from(Usable usable) {
    return switch (usable.from()) {
      case LOTS ->
          "From %s: %d of %d pieces were usable. That lots differ is reckoned in."
              .formatted(ofYours(usable.lots()), usable.usable(), usable.received());
      case SHARED_LOTS ->
          "From %s and %s of other members who share theirs: %d of %d pieces were usable. That lots differ is reckoned in."
              .formatted(
                  ofYours(usable.lots()),
                  usable.sharedLots() == 1 ? "one lot" : usable.sharedLots() + " lots",
                  usable.usable(),
                  usable.received());
      case RECORD ->
          "From the record: %d of %d pieces were usable."
              .formatted(usable.usable(), usable.received());
      case SHARE -> "From the share you know: %s usable.".formatted(percent(usable.share()));
      case ASSUMED ->
          "Assumed: 9 of 10 pieces are usable. Enter what you counted for a better number.";
    };
  }

  private static String ofYours(int lots) {
    return switch (lots) {
      case 0 -> "no lot of yours";
      case 1 -> "one lot of yours";
      default -> lots + " lots of yours";
    };
  }

  private static String how(Order order) {
    double each = 1 - (1 - order.wanted()) / order.lines().size();
    String smallest =
        "The order is the smallest with a chance of at least %s for each line."
            .formatted(percent(each));
    Usable usable = order.usable();
    if (usable.alpha() == null) {
      return "The number of usable pieces follows a binomial distribution. " + smallest;
    }
    return String.format(
            Locale.ROOT,
            "The number of usable pieces follows a beta-binomial distribution, alpha %.1f and beta"
                + " %.1f. ",
            usable.alpha(),
            usable.beta())
        + smallest;
  }
}
