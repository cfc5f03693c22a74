package club.emberwell.web.about;

import club.emberwell.laser.Effect;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.stats.DoseWindow;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.DosePlot;
import club.emberwell.web.plot.StripPlot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Tests of eight invented members, drawn and counted as those of real ones are, to explain the
 * pictures by.
 *
 * @param right at how many of the tests the result was right
 */
record WorkedRange(DosePlot dose, StripPlot members, int tests, int right, int voices) {
  /** Doses in J/mm², by member: too little, right, too much. */
  private static final double[][][] TESTED = {
    {{0.9}, {1.6, 2.0}, {4.6}},
    {{1.1}, {1.9, 2.6}, {5.5}},
    {{1.4, 1.0}, {2.2}, {4.1}},
    {{0.8}, {1.4, 2.4}, {}},
    {{1.3}, {2.5, 3.4}, {6.2}},
    {{}, {2.1}, {3.6, 5.0}},
    {{1.2}, {1.8}, {}},
    {{1.7}, {2.8, 3.2}, {4.4}},
  };

  private static final List<Effect> LANES =
      List.of(Effect.TOO_LITTLE, Effect.RIGHT, Effect.TOO_MUCH);

  /** By how much members differ: standard deviation of ln dose. */
  private static final double DIFFER = 0.25;

  private static final double START = 2.3;
  private static final double LEAST = 0.8;
  private static final double MOST = 6.2;
  private static final int POINTS = 40;
  private static final String UNIT = " J/mm²";

  private record Test(int member, double dose, Effect effect) {}

  static WorkedRange of() {
    List<Test> tests = new ArrayList<>();
    for (int member = 0; member < TESTED.length; member++) {
      for (int lane = 0; lane < LANES.size(); lane++) {
        for (double dose : TESTED[member][lane]) {
          tests.add(new Test(member, dose, LANES.get(lane)));
        }
      }
    }
    int right = (int) tests.stream().filter(test -> test.effect() == Effect.RIGHT).count();
    return new WorkedRange(drawn(tests), middles(), tests.size(), right, TESTED.length);
  }

  private static DosePlot drawn(List<Test> tests) {
    DoseWindow fit =
        DoseWindow.of(
            tests.stream().mapToInt(Test::member).toArray(),
            tests.stream().mapToDouble(Test::dose).toArray(),
            tests.stream().map(Test::effect).toArray(Effect[]::new),
            DIFFER);
    double low = fit.lower().dose();
    double high = fit.upper().dose();
    return DosePlot.of(
        new DosePlot.Input(
            new Caption(
                "worked",
                "What came out at which dose",
                "Tests of eight invented members. Right between about %s and %s."
                    .formatted(number(low), number(high) + UNIT)),
            Stream.of(Effect.TOO_MUCH, Effect.RIGHT, Effect.TOO_LITTLE)
                .map(effect -> lane(effect, tests))
                .toList(),
            chances(fit),
            new double[] {low, low, high, high},
            START,
            "start " + number(START),
            new DosePlot.Scale("energy per area, J/mm²", WorkedRange::number)));
  }

  private static DosePlot.Effect lane(Effect effect, List<Test> tests) {
    String kind =
        switch (effect) {
          case TOO_LITTLE -> "little";
          case RIGHT -> "right";
          case TOO_MUCH -> "much";
        };
    return new DosePlot.Effect(
        effect.label().toLowerCase(Locale.ROOT),
        tests.stream()
            .filter(test -> test.effect() == effect)
            .map(
                test ->
                    new DosePlot.Trial(
                        test.dose(),
                        kind,
                        false,
                        "#dots",
                        effect.label() + " at " + number(test.dose()) + UNIT))
            .toList());
  }

  private static List<DosePlot.Chance> chances(DoseWindow fit) {
    List<DosePlot.Chance> chances = new ArrayList<>();
    for (int i = 0; i <= POINTS; i++) {
      double dose = LEAST * Math.pow(MOST / LEAST, (double) i / POINTS);
      fit.at(dose).ifPresent(at -> chances.add(new DosePlot.Chance(dose, at.right(), true)));
    }
    return chances;
  }

  /** Each member's own middle of what was right. */
  private static StripPlot middles() {
    double[] own =
        Arrays.stream(TESTED)
            .mapToDouble(of -> Arrays.stream(of[1]).average().orElseThrow())
            .sorted()
            .toArray();
    double median = (own[3] + own[4]) / 2;
    return StripPlot.of(
        new StripPlot.Input(
            new Caption(
                "worked-members",
                "The middle of each member",
                "Eight members, from %s to %s.".formatted(number(own[0]), number(own[7]) + UNIT)),
            new StripPlot.Values(own, new double[0]),
            new StripPlot.Middle(null, median, null, new double[] {own[0], own[7]}),
            new StripPlot.Scale(true, WorkedRange::number, null)));
  }

  private static String number(double value) {
    return QuantityPrinter.number(Math.round(value * 10) / 10.0, NumberStyle.ANY);
  }
}
