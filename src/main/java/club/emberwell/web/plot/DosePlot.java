package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;

/**
 * Effects against dose: a lane for each effect with a dot for each trial, the chance of right over
 * them, the doses that are right as a band that fades where its edge is not known.
 *
 * <p>Places across are percent of the width, places down pixels: one drawing serves a phone and a
 * desk, and its letters keep their size. Only how dots are stacked differs: each has a level for
 * narrow and one for wide screens.
 *
 * @param start where the start is marked, percent; null = nowhere
 */
public record DosePlot(
    Caption caption,
    List<Lane> lanes,
    List<String> curves,
    Band band,
    Mark start,
    List<Axis.Tick> ticks,
    String axisName) {
  /** Widths for which the dots are stacked, px: a phone of 360 px, half of a desk. */
  private static final double NARROW = 216;

  private static final double WIDE = 400;

  /** Dots this far apart do not touch, px. */
  private static final double APART = 10;

  private static final double STEP = 9;

  /** Levels above each other; a dot more begins again below, over others of its own lane. */
  static final int LEVELS = 12;

  private static final double EDGE = 2;
  private static final double FULL = 100;
  private static final double CURVE_TOP = 22;
  private static final double CURVE_HEIGHT = 54;
  private static final double LANE_GAP = 13;
  private static final double BELOW = 40;
  private static final double NEAR_EDGE = 16;

  /** A place with what stands there; anchor as SVG has it. */
  public record Mark(double x, String label, String anchor) {}

  /**
   * A trial.
   *
   * @param kind style and shape: little, right, much
   * @param aside drawn hollow
   */
  public record Trial(double dose, String kind, boolean aside, String href, String name) {}

  /**
   * A trial in its place.
   *
   * @param narrow its level on narrow screens, 0 = lowest
   * @param wide the same on wide ones
   */
  public record Dot(
      double x, int narrow, int wide, String kind, boolean aside, String href, String name) {
    /** Style classes: t or, for what failed, f; its levels above the lowest; o where hollow. */
    public String style() {
      return (kind.equals("right") ? "t" : "f")
          + (narrow > 0 ? " n" + narrow : "")
          + (wide != narrow ? " w" + wide : "")
          + (aside ? " o" : "");
    }
  }

  /**
   * The trials of one effect.
   *
   * @param y of the centres of the lowest dots
   */
  public record Lane(String label, double y, List<Dot> dots) {}

  /**
   * The doses that are right, percent of the width.
   *
   * @param from where it is surely inside
   * @param risesFrom where it begins to be inside; equal to {@code from} where the edge is told
   */
  public record Band(double risesFrom, double from, double to, double fallsTo) {
    public double rise() {
      return Axis.round(from - risesFrom);
    }

    public double core() {
      return Axis.round(to - from);
    }

    public double fall() {
      return Axis.round(fallsTo - to);
    }
  }

  /** A lane before it is laid out, in the reader's unit. */
  public record Effect(String label, List<Trial> trials) {}

  /** The chance of right at a dose. */
  public record Chance(double dose, double right, boolean observed) {}

  /**
   * What is drawn, in the reader's unit.
   *
   * @param effects from the top
   * @param window least to most dose of the band's four corners; null = no band
   * @param start null = none
   */
  public record Input(
      Caption caption,
      List<Effect> effects,
      List<Chance> chances,
      double[] window,
      Double start,
      String startLabel,
      Scale scale) {}

  /** How the axis is told. */
  public record Scale(String name, DoubleFunction<String> label) {}

  public static DosePlot of(Input input) {
    Axis axis = Axis.holding(everything(input), true, EDGE, FULL - EDGE);
    List<Lane> lanes = new ArrayList<>();
    double y = input.chances().isEmpty() ? CURVE_TOP : CURVE_TOP + CURVE_HEIGHT;
    for (Effect effect : input.effects()) {
      Lane lane = lane(effect, axis, y + LANE_GAP);
      lanes.add(lane);
      y = lane.y() + STEP / 2;
    }
    return new DosePlot(
        input.caption(),
        lanes,
        curves(input.chances(), axis),
        input.window() == null ? null : band(input.window(), axis),
        input.start() == null ? null : start(input, axis),
        axis.ticks(input.scale().label()),
        input.scale().name());
  }

  private static double[] everything(Input input) {
    DoubleStream trials =
        input.effects().stream().flatMap(e -> e.trials().stream()).mapToDouble(Trial::dose);
    DoubleStream start =
        input.start() == null ? DoubleStream.empty() : DoubleStream.of(input.start());
    return DoubleStream.concat(trials, start).toArray();
  }

  private static Lane lane(Effect effect, Axis axis, double top) {
    List<Trial> sorted =
        effect.trials().stream().sorted(Comparator.comparingDouble(Trial::dose)).toList();
    double[] x = sorted.stream().mapToDouble(trial -> axis.at(trial.dose())).toArray();
    int[] narrow = levels(x, NARROW);
    int[] wide = levels(x, WIDE);
    int tallest = 0;
    List<Dot> dots = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      Trial trial = sorted.get(i);
      tallest = Math.max(tallest, Math.max(narrow[i], wide[i]));
      dots.add(
          new Dot(
              x[i], narrow[i], wide[i], trial.kind(), trial.aside(), trial.href(), trial.name()));
    }
    return new Lane(effect.label(), Axis.round(top + tallest * STEP), dots);
  }

  /**
   * The lowest level on which each dot touches no other, at a width.
   *
   * @param x percent of the width, ascending
   */
  static int[] levels(double[] x, double width) {
    double[] last = new double[LEVELS];
    Arrays.fill(last, Double.NEGATIVE_INFINITY);
    int[] levels = new int[x.length];
    for (int i = 0; i < x.length; i++) {
      double here = x[i] * width / FULL;
      int level = 0;
      while (level < LEVELS && here - last[level] < APART) {
        level++;
      }
      levels[i] = level % LEVELS;
      last[levels[i]] = here;
    }
    return levels;
  }

  /** A run of points as SVG has them for each stretch that was tried or was not. */
  private static List<String> curves(List<Chance> chances, Axis axis) {
    StringBuilder tried = new StringBuilder();
    for (Chance chance : chances) {
      if (chance.observed()) {
        tried
            .append(tried.isEmpty() ? "" : " ")
            .append(axis.at(chance.dose()))
            .append(',')
            .append(Axis.round(CURVE_HEIGHT * (1 - chance.right())));
      }
    }
    return tried.isEmpty() ? List.of() : List.of(tried.toString());
  }

  private static Band band(double[] corners, Axis axis) {
    return new Band(
        axis.at(corners[0]), axis.at(corners[1]), axis.at(corners[2]), axis.at(corners[3]));
  }

  private static Mark start(Input input, Axis axis) {
    double x = axis.at(input.start());
    String anchor = x < NEAR_EDGE ? "start" : x > FULL - NEAR_EDGE ? "end" : "middle";
    return new Mark(x, input.startLabel(), anchor);
  }

  public double curveTop() {
    return CURVE_TOP;
  }

  public double curveHeight() {
    return CURVE_HEIGHT;
  }

  public double axisY() {
    return Axis.round(lanes.get(lanes.size() - 1).y() + STEP);
  }

  public double height() {
    return axisY() + BELOW;
  }
}
