package club.emberwell.consensus.answer;

import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.IsoDose;
import club.emberwell.laser.dose.Transfer;
import club.emberwell.laser.dose.Transfer.Verdict;
import club.emberwell.remark.Coded;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Quantiles;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a range means on the reader's machine: first whether it may be carried over at all, then
 * lines of equal dose.
 *
 * <p>Every voice is judged by {@link Transfer} with its own typical trial; the verdict is the one
 * that at least half of the voices reach, so that a machine unlike most peers' gets no number.
 *
 * @param judgement whether a range may be carried over
 * @param equalDose lines over power, cut to the machine's limits
 * @param moved typical trials of those members from whom it may be carried over
 * @param sideBySide peers' medians and this machine's values: what must match before the dose
 */
public record OnMyMachine(
    Laser laser,
    Judgement judgement,
    EqualDose equalDose,
    List<Moved> moved,
    List<Comparison> sideBySide) {
  /** Members' settings that are moved at most. */
  private static final int MOVED = 40;

  /**
   * Whether a range may be carried over.
   *
   * @param reasons of the verdict, the deciding one first
   * @param verdicts how many voices got each
   */
  public record Judgement(Verdict verdict, List<String> reasons, Map<Verdict, Integer> verdicts) {}

  /**
   * What gives the same dose.
   *
   * @param basis where the doses of the lines come from; empty where there are no lines
   * @param spacingMm of the lines, null for line work or where nobody stated one
   * @param lines empty unless the verdict gives a number
   */
  public record EqualDose(Optional<Basis> basis, Double spacingMm, List<Line> lines) {}

  /**
   * Settings of a member at the share of power they used and the line spacing of the lines, one
   * pass, at their own dose.
   */
  public record Moved(Whole from, double powerPercent, double speedMmS) {}

  /** Where the doses come from. */
  public enum Basis implements Coded {
    WINDOW("window", "where most tests were right"),
    QUARTILES("quartiles", "the middle half of right doses");

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

  /** Which dose a line is drawn for. */
  public enum Place {
    LOW,
    MIDDLE,
    HIGH
  }

  /** One line of equal dose. */
  public record Line(Place place, double dose, List<IsoDose.Point> points) {}

  /**
   * What is said of the work.
   *
   * @param middle the one dose in the middle of all that is said
   * @param times how many times those doses this machine takes, 1 where that is not known
   */
  public record Said(Range range, Window window, Optional<Double> middle, double times) {
    private Optional<Doses> onMachine() {
      return doses().map(found -> found.times(times));
    }

    private Optional<Doses> doses() {
      if (window.lower().fitted() && window.upper().fitted()) {
        double low = window.lower().dose();
        double high = window.upper().dose();
        if (low < high) {
          double centre = middle.filter(m -> m > low && m < high).orElse(Math.sqrt(low * high));
          return Optional.of(new Doses(Basis.WINDOW, low, centre, high));
        }
      }
      return range
          .dose()
          .quantiles()
          .filter(q -> q.p25() > 0)
          .map(q -> new Doses(Basis.QUARTILES, q.p25(), middle.orElse(q.median()), q.p75()));
    }
  }

  private record Doses(Basis basis, double low, double middle, double high) {
    Doses times(double factor) {
      return new Doses(basis, factor * low, factor * middle, factor * high);
    }
  }

  private record Judged(Whole peer, Transfer.Outcome outcome) {}

  /**
   * Judges and computes.
   *
   * @param mine the reader's machine
   * @param spacing line spacing the reader would use, mm; null = the middle of peers'
   */
  public static OnMyMachine of(Group group, Said said, Laser mine, Double spacing) {
    Range range = said.range();
    Process process = group.key().process();
    Double lines = process.doseKind() == DoseKind.AREAL ? spacing(range, spacing) : null;
    Optional<Transfer.Outcome> refused = unnamedBand(group);
    if (refused.isPresent()) {
      return refused(mine, refused.get(), lines);
    }
    List<Judged> judged = judge(group, range, mine, lines);
    if (judged.isEmpty()) {
      return refused(
          mine,
          new Transfer.Outcome(
              Verdict.SHOW_SIDE_BY_SIDE,
              List.of("No peer stated a dose for a right result yet."),
              null,
              List.of()),
          lines);
    }
    Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    judged.forEach(j -> verdicts.merge(j.outcome().verdict(), 1, Integer::sum));
    Verdict verdict = half(verdicts, judged.size());
    Judged typical =
        judged.stream().filter(j -> j.outcome().verdict() == verdict).findFirst().orElseThrow();
    Optional<Doses> doses = verdict.givesNumber() ? said.onMachine() : Optional.empty();
    return new OnMyMachine(
        mine,
        new Judgement(verdict, typical.outcome().reasons(), verdicts),
        new EqualDose(
            doses.map(Doses::basis),
            lines,
            doses.map(d -> lines(mine, process.doseKind(), d, lines)).orElse(List.of())),
        verdict.givesNumber() ? moved(judged, mine, process, lines) : List.of(),
        sideBySide(typical.outcome(), group));
  }

  private static List<Moved> moved(
      List<Judged> judged, Laser mine, Process process, Double spacing) {
    if (process.doseKind() == DoseKind.AREAL && spacing == null) {
      return List.of();
    }
    double width = spacing == null ? Double.NaN : spacing;
    List<Moved> moved = new ArrayList<>();
    for (Judged one : judged) {
      Whole peer = one.peer();
      Double percent =
          new Aim(mine, process, peer.dose())
              .plan(peer.settings())
              .map(Settings::powerPercent)
              .orElse(null);
      if (one.outcome().verdict().givesNumber() && percent != null && moved.size() < MOVED) {
        double watts = mine.ratedPowerW() * percent / 100;
        double speed = IsoDose.speedFor(process.doseKind(), peer.dose(), watts, width, 1);
        if (mine.maxSpeedMmS() == null || speed <= mine.maxSpeedMmS()) {
          moved.add(new Moved(peer, percent, speed));
        }
      }
    }
    return List.copyOf(moved);
  }

  private static OnMyMachine refused(Laser mine, Transfer.Outcome outcome, Double spacing) {
    return new OnMyMachine(
        mine,
        new Judgement(outcome.verdict(), outcome.reasons(), Map.of()),
        new EqualDose(Optional.empty(), spacing, List.of()),
        List.of(),
        outcome.sideBySide());
  }

  /** Without a wavelength nothing is known to be alike. */
  private static Optional<Transfer.Outcome> unnamedBand(Group group) {
    if (group.key().band() != WavelengthBand.OTHER || group.key().light().nm() > 0) {
      return Optional.empty();
    }
    return Optional.of(
        new Transfer.Outcome(
            Verdict.NO_TRANSFER,
            List.of("The wavelength these settings were made with is not known."),
            null,
            List.of()));
  }

  private static Double spacing(Range range, Double given) {
    return given != null
        ? given
        : range
            .setting(Measure.LINE_SPACING)
            .filter(spread -> spread.voices().size() > 0)
            .map(spread -> Quantiles.median(spread.voices().values()))
            .orElse(null);
  }

  private static List<Judged> judge(Group group, Range range, Laser mine, Double spacing) {
    Settings planned = Settings.NONE.with(Setting.LINE_SPACING, spacing);
    List<Judged> judged = new ArrayList<>();
    for (Whole peer : Peers.typical(group, range.dose())) {
      Transfer.Question question =
          new Transfer.Question(
              peer.laser(), peer.settings(), mine, planned, group.key().process(), true, true);
      judged.add(new Judged(peer, Transfer.judge(question)));
    }
    return judged;
  }

  /** The best verdict that at least half of the voices reach or better. */
  private static Verdict half(Map<Verdict, Integer> verdicts, int n) {
    int reached = 0;
    for (Verdict verdict : Verdict.values()) {
      reached += verdicts.getOrDefault(verdict, 0);
      if (2 * reached >= n) {
        return verdict;
      }
    }
    throw new IllegalStateException("no verdict");
  }

  private static List<Line> lines(Laser mine, DoseKind kind, Doses doses, Double spacing) {
    if (kind == DoseKind.AREAL && spacing == null) {
      return List.of();
    }
    double width = spacing == null ? Double.NaN : spacing;
    return List.of(
        new Line(Place.LOW, doses.low(), IsoDose.line(mine, kind, doses.low(), width, 1)),
        new Line(Place.MIDDLE, doses.middle(), IsoDose.line(mine, kind, doses.middle(), width, 1)),
        new Line(Place.HIGH, doses.high(), IsoDose.line(mine, kind, doses.high(), width, 1)));
  }

  /** For pulsed work the peers' medians stand on the left, else the typical trial's values. */
  private static List<Comparison> sideBySide(Transfer.Outcome outcome, Group group) {
    if (!group.key().regime().pulsed()) {
      return outcome.sideBySide();
    }
    return PulseMedians.beside(group, outcome);
  }
}
