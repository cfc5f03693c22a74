package club.emberwell.grid.plan;

import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.Wish;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.stats.Interval;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Gives the axes of a grid their values, so that its doses go in equal ratios from the lowest to
 * the highest to be tested.
 */
final class AxesPlanner {
  private static final String ACROSS = "/axes/across";
  private static final String DOWN = "/axes/down";

  private final Laser laser;
  private final Process process;
  private final Settings base;
  private final Wish wish;
  private final UnitPreferences reader;

  /**
   * @param base whole settings to begin with, as far as they are known
   * @param reader in whose unit speeds are rounded
   */
  AxesPlanner(Laser laser, Process process, Settings base, Wish wish, UnitPreferences reader) {
    this.laser = laser;
    this.process = process;
    this.base = base;
    this.wish = wish;
    this.reader = reader;
  }

  /**
   * @param doses to cover; empty where nobody knows
   * @throws EntryRefused where they cannot be planned without more being said
   */
  GridPlan.Axes over(Optional<Interval> doses) {
    if (wish.settled()) {
      return new GridPlan.Axes(wish.across(), wish.down());
    }
    Setting across = wish.across() != null ? wish.across().setting() : usualAcross();
    Setting down = wish.down() != null ? wish.down().setting() : usualDown(across);
    Scale columns = scale(across);
    Scale rows = scale(down);
    Interval span =
        doses.orElseThrow(
            () ->
                missing(
                    "/axes",
                    "No results tell where to begin. Give both settings their values by hand."));
    if (isGiven(wish.across()) || isGiven(wish.down())) {
      return isGiven(wish.across())
          ? new GridPlan.Axes(wish.across(), beside(wish.across(), columns, rows, span))
          : new GridPlan.Axes(beside(wish.down(), rows, columns, span), wish.down());
    }
    if (columns.effect() == 0 || rows.effect() == 0) {
      boolean acrossFree = columns.effect() == 0;
      Axis free = around(acrossFree ? columns : rows, acrossFree ? ACROSS : DOWN);
      Axis other =
          acrossFree ? beside(free, columns, rows, span) : beside(free, rows, columns, span);
      return acrossFree ? new GridPlan.Axes(free, other) : new GridPlan.Axes(other, free);
    }
    return both(columns, rows, span);
  }

  private static boolean isGiven(Axis axis) {
    return axis != null && !axis.isOpen();
  }

  /** Common practice, no source: pulsed colour marks are sought over frequency and speed. */
  private Setting usualAcross() {
    boolean pulses =
        process == Process.COLOUR_MARKING
            && laser.regime().pulsed()
            && base.repetitionRateKhz() != null;
    Setting usual = pulses ? Setting.REPETITION_RATE : Setting.POWER;
    boolean taken = wish.down() != null && wish.down().setting() == usual;
    return taken ? Setting.SPEED : usual;
  }

  private static Setting usualDown(Setting across) {
    return across == Setting.SPEED ? Setting.POWER : Setting.SPEED;
  }

  private Scale scale(Setting setting) {
    QuantityKind power =
        base.powerW() == null || base.powerPercent() != null
            ? QuantityKind.POWER_PERCENT
            : QuantityKind.POWER;
    return Scale.of(setting, laser, process, power, reader);
  }

  private static EntryRefused missing(String at, String detail) {
    return new EntryRefused(RemarkId.RANGE_MISSING, at, detail);
  }

  /** Both sides change the dose. */
  private GridPlan.Axes both(Scale columns, Scale rows, Interval span) {
    if (columns.isCount() || rows.isCount()) {
      return columns.isCount() ? swapped(passes(rows, columns, span)) : passes(columns, rows, span);
    }
    Shape shape = Shape.of(span.ratio(), wish.resolution(), wish.most());
    double fineSpan = Math.pow(shape.step(), shape.fine() - 1);
    Interval fine = held(columns, about(columns, fineSpan));
    Interval coarse = solved(rows, columns, fine, span, shape);
    // what the rows cannot reach the columns take over, as far as they go
    double over = beyond(rows.limits(), coarse);
    if (over != 1) {
      double shift = Math.pow(over, -(double) rows.effect() / columns.effect());
      fine = held(columns, fine.times(shift));
      coarse = solved(rows, columns, fine, span, shape);
    }
    return new GridPlan.Axes(
        columns.between(fine.low(), fine.high(), shape.fine(), shape.step()),
        rows.between(coarse.low(), coarse.high(), shape.coarse(), shape.step()));
  }

  private static GridPlan.Axes swapped(GridPlan.Axes axes) {
    return new GridPlan.Axes(axes.down(), axes.across());
  }

  /** Rows that double, and columns that fill one doubling. */
  private GridPlan.Axes passes(Scale columns, Scale rows, Interval span) {
    Shape shape = Shape.doubling(span.ratio(), wish.resolution(), wish.most());
    Settings once = base.with(rows.setting(), 1);
    double least = at(columns, once, span.low());
    double most = at(columns, once, span.low() * Math.pow(shape.step(), shape.fine() - 1));
    Interval fine = held(columns, new Interval(Math.min(least, most), Math.max(least, most), 1));
    return new GridPlan.Axes(
        columns.between(fine.low(), fine.high(), shape.fine(), shape.step()),
        rows.doubled(shape.coarse()));
  }

  /** One side has its values: the other covers what they leave. */
  private Axis beside(Axis given, Scale its, Scale open, Interval span) {
    if (open.effect() == 0) {
      return around(open, given == wish.across() ? DOWN : ACROSS);
    }
    int room = Math.max(1, wish.most() / given.size());
    Settings low = given.at(base, its.effect() < 0 ? last(given) : first(given));
    Settings high = given.at(base, its.effect() < 0 ? first(given) : last(given));
    double reached = its.effect() == 0 ? 1 : given.number(last(given)) / given.number(first(given));
    double spread = Math.max(reached, 1 / reached);
    double left = span.ratio() / spread;
    int count = left <= 1 ? 1 : rowsFor(given, spread, left, room);
    double step = Math.max(wish.resolution(), Math.pow(left, 1.0 / Math.max(1, count - 1)));
    if (count == 1) {
      double middle = Math.sqrt(span.low() * span.high());
      double own = at(open, low, middle / Math.sqrt(spread));
      return open.between(own, own, 1, Math.min(step, wish.resolution()));
    }
    double one = at(open, low, span.low());
    double other = at(open, high, span.high());
    Interval ends = held(open, new Interval(Math.min(one, other), Math.max(one, other), 1));
    if (open.isCount()) {
      int doublings = (int) Math.ceil(Math.log(Math.max(1, ends.high())) / Math.log(2));
      return open.doubled(Math.max(1, Math.min(room, doublings + 1)));
    }
    return open.between(ends.low(), ends.high(), count, Math.min(step, wish.resolution()));
  }

  private static int first(Axis axis) {
    return axis.number(0) <= axis.number(axis.size() - 1) ? 0 : axis.size() - 1;
  }

  private static int last(Axis axis) {
    return axis.size() - 1 - first(axis);
  }

  /** Where the given values are close enough, each new one goes on where they end. */
  private int rowsFor(Axis given, double spread, double left, int room) {
    double widest = 1;
    for (int i = 1; i < given.size(); i++) {
      double ratio = spread == 1 ? 1 : given.number(i) / given.number(i - 1);
      widest = Math.max(widest, Math.max(ratio, 1 / ratio));
    }
    boolean close = widest <= wish.resolution() * (1 + 1e-9);
    double each = close ? spread * wish.resolution() : wish.resolution();
    return Shape.line(left, each, room);
  }

  /** Values round the one to begin with, of what does not change the dose. */
  private Axis around(Scale open, String at) {
    int count = Math.max(1, Math.min(3, wish.most() / 2));
    Double middle = base.number(open.setting());
    return switch (open.setting()) {
      case FOCUS_OFFSET -> stepped(open, middle == null ? 0 : middle, 1, count);
      case SCAN_ANGLE -> stepped(open, 45, 45, count);
      default -> {
        if (middle == null || !(middle > 0)) {
          throw missing(at, "Give its values by hand: the results do not say which ones matter.");
        }
        double low = count == 3 ? middle / 1.5 : middle;
        double high = count == 1 ? middle : middle * 1.5;
        yield open.between(low, high, count, 1.5);
      }
    };
  }

  private static Axis stepped(Scale open, double middle, double step, int count) {
    return new Axis(
        open.setting(),
        IntStream.range(0, count)
            .mapToObj(i -> open.value(middle + (i - count / 2) * step))
            .toList());
  }

  private Interval about(Scale scale, double span) {
    Double known = base.number(scale.setting());
    double middle =
        known != null && known > 0
            ? known
            : Math.sqrt(scale.limits().low() * scale.limits().high());
    return new Interval(middle / Math.sqrt(span), middle * Math.sqrt(span), 1);
  }

  /** Moved inside the limits without losing width; cut where it is wider than they are. */
  private static Interval held(Scale scale, Interval wanted) {
    Interval limits = scale.limits();
    double shift = beyond(limits, wanted);
    Interval moved = wanted.times(shift);
    return new Interval(
        Math.max(limits.low(), Math.min(limits.high(), moved.low())),
        Math.min(limits.high(), Math.max(limits.low(), moved.high())),
        1);
  }

  /** By how much an interval must be multiplied to lie inside; the upper end first. */
  private static double beyond(Interval limits, Interval wanted) {
    if (wanted.high() > limits.high()) {
      return limits.high() / wanted.high();
    }
    return wanted.low() < limits.low()
        ? Math.min(limits.low() / wanted.low(), limits.high() / wanted.high())
        : 1;
  }

  /** What the rows must be for the whole to begin at the lowest dose and end at the highest. */
  private Interval solved(Scale rows, Scale columns, Interval fine, Interval span, Shape shape) {
    double weakest = columns.effect() > 0 ? fine.low() : fine.high();
    Settings settings = base.with(columns.setting(), columns.value(weakest));
    double one = at(rows, settings, span.low());
    double rise = Math.pow(shape.step(), shape.fine() * (shape.coarse() - 1.0));
    double other = at(rows, settings, span.low() * rise);
    return new Interval(Math.min(one, other), Math.max(one, other), 1);
  }

  /** The value of a setting at which the others give a dose. */
  private double at(Scale scale, Settings others, double dose) {
    Settings one = others.with(scale.setting(), scale.value(1));
    Double unit = Dose.derive(laser, process, one).dose(process.doseKind());
    if (unit == null) {
      throw lacking(one);
    }
    return Math.pow(dose / unit, 1.0 / scale.effect());
  }

  private EntryRefused lacking(Settings settings) {
    Setting missing =
        Stream.of(Setting.POWER, Setting.SPEED, Setting.LINE_SPACING)
            .filter(setting -> settings.number(setting) == null)
            .filter(setting -> setting.appliesTo(process))
            .findFirst()
            .orElse(Setting.POWER);
    String detail = "Give the %s: the energy of a test depends on it.";
    return new EntryRefused(
        RemarkId.REQUIRED,
        "/settings/" + missing.code(),
        detail.formatted(missing.label().toLowerCase(Locale.ROOT)));
  }
}
