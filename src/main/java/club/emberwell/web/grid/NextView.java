package club.emberwell.web.grid;

import club.emberwell.grid.next.Proposal;
import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Setting;
import club.emberwell.laser.dose.Settable;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.range.MeasureText;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;

/**
 * What to burn next, in words.
 *
 * @param known how well the ends are known, in sentences
 * @param said what matters of the results, in sentences
 * @param unit of the doses
 * @param narrower what the next tests are expected to bring; null without tests
 * @param plan leads to a grid of them; null without tests
 */
public record NextView(
    List<String> known,
    List<String> said,
    String unit,
    List<Test> tests,
    String narrower,
    String plan) {
  private static final double FULL = 100;

  /**
   * One test.
   *
   * @param chance of right, percent
   */
  public record Test(String settings, String dose, String chance) {}

  static NextView of(Proposal found, UnitPreferences reader) {
    MeasureText text = new MeasureText(Measure.dose(found.process().doseKind()), reader);
    List<Proposal.Test> tests = settable(found, reader);
    return new NextView(
        found.window().map(window -> known(window, text)).orElse(List.of()),
        found.said(),
        text.unit(),
        tests.stream()
            .map(
                test ->
                    new Test(
                        TrialText.plain(test.settings(), reader),
                        text.told(test.dose()),
                        Long.toString(Math.round(FULL * test.chance()))))
            .toList(),
        found.next().flatMap(next -> found.window()).map(NextView::narrower).orElse(null),
        found.next().map(next -> address(next, tests, reader)).orElse(null));
  }

  /** With speeds of few figures in the reader's unit, unless two would become one. */
  private static List<Proposal.Test> settable(Proposal found, UnitPreferences reader) {
    List<Proposal.Test> tests =
        found.tests().stream().map(test -> settable(test, found.grid().laser(), reader)).toList();
    long speeds = tests.stream().map(test -> test.settings().speedMmS()).distinct().count();
    return speeds == tests.size() ? tests : found.tests();
  }

  private static Proposal.Test settable(Proposal.Test test, Laser laser, UnitPreferences reader) {
    Settable set = Settable.of(test.settings(), test.dose(), laser.maxSpeedMmS(), reader);
    return new Proposal.Test(set.settings(), set.dose(), test.chance());
  }

  private static List<String> known(Proposal.Known window, MeasureText text) {
    return List.of(
        "On this machine it is right from about %s to %s %s."
            .formatted(
                text.told(window.lower().dose()), text.told(window.upper().dose()), text.unit()),
        "The lower end is between %s and the upper end between %s %s, with 95 %% chance each."
            .formatted(
                text.ends(window.lower().interval()).replace(" to ", " and ") + " " + text.unit(),
                text.ends(window.upper().interval()).replace(" to ", " and "),
                text.unit()),
        "This rests on %d %s of yours and on %s."
            .formatted(
                window.tests(), window.tests() == 1 ? "test" : "tests", window.basis().words()));
  }

  private static String narrower(Proposal.Known window) {
    return "After these tests both ends should be known about %s times as well."
        .formatted(Math.round(10 / window.narrower()) / 10.0);
  }

  /** The plan with these tests as its values, typed as the reader types. */
  private static String address(
      WrittenGrid next, List<Proposal.Test> tests, UnitPreferences reader) {
    Map<String, String> values = PlanForm.values(next);
    List<Object> speeds = new ArrayList<>();
    tests.forEach(test -> speeds.add(test.settings().values().get(Setting.SPEED)));
    values.put(
        PlanForm.ACROSS + PlanForm.VALUES,
        AxisField.typed(new Axis(Setting.SPEED, speeds), reader));
    StringJoiner address = new StringJoiner("&", "/grids/plan?", "");
    values.forEach(
        (name, value) -> {
          if (value != null && !value.isEmpty()) {
            address.add(name + "=" + QueryString.encoded(value));
          }
        });
    return address.toString();
  }
}
