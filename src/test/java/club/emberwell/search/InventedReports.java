package club.emberwell.search;

import club.emberwell.entry.EntryState;
import club.emberwell.laser.Direction;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.Trials;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.member.Licence;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSnapshot.Author;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.ReportSnapshot.Standing;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;

/** Reports made from a fixed seed; the numbers only have to differ, not to be good settings. */
final class InventedReports {
  static final List<String> MATERIALS =
      List.of("stainless-304", "stainless-steel", "slate", "walnut", "birch-plywood", "glass");
  private static final List<String> NOTES =
      List.of("clean edges", "needs two tumblers", "café blanks, anodised lids", "faint", "");
  private static final double[] WAVELENGTHS = {10600, 450, 1064, 532, 355, 1064};

  private final Random random;
  private long number;

  InventedReports(long seed) {
    random = new Random(seed);
  }

  List<ReportSnapshot> many(int count) {
    List<ReportSnapshot> reports = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      reports.add(next());
    }
    return reports;
  }

  ReportSnapshot next() {
    number++;
    int member = 1 + random.nextInt(30);
    Laser laser = laser();
    boolean filed = random.nextInt(20) > 0;
    String coating = pick(null, "powder-coat", "anodised-dyed", null);
    Instant at = Instant.ofEpochSecond(1_700_000_000L + random.nextInt(60_000_000));
    return new ReportSnapshot(
        new Standing(
            new UUID(random.nextLong(), random.nextLong()),
            number,
            1 + random.nextInt(3),
            EntryState.LIVE,
            Licence.CC_BY,
            at,
            at),
        new Author(new UUID(1, member), member, "member" + member),
        new Burner(
            new UUID(2, member),
            random.nextInt(5) == 0 ? 0 : member,
            "Workshop " + (char) ('a' + member % 26),
            pick(null, "Tussock 10", "Bramlet 60"),
            laser),
        work(filed, coating),
        trials(laser),
        null,
        new ReportSnapshot.Beside(random.nextInt(3), null, 0));
  }

  private Work work(boolean filed, String coating) {
    String slug = filed ? MATERIALS.get(random.nextInt(MATERIALS.size())) : null;
    return Work.of(Process.values()[random.nextInt(Process.values().length)])
        .with(WorkProperty.MATERIAL, new Filed(slug, "as written " + random.nextInt(5)))
        .with(WorkProperty.COATING, new Filed(coating, coating))
        .with(WorkProperty.COLOUR, new Filed(pick(null, "black", "white", "red"), null))
        .with(WorkProperty.THICKNESS, maybe(3, 0.5))
        .with(WorkProperty.NOTES, NOTES.get(random.nextInt(NOTES.size())))
        .with(WorkProperty.RESULT_COLOUR, new Filed(pick(null, "gold", "blue"), null))
        .with(WorkProperty.SUPPLIER, pick(null, "Osier Blanks", "Marl & Finch"))
        .with(WorkProperty.LOT, pick(null, "LOT-7", "LOT-8"))
        .with(WorkProperty.CONTROLLER_VERSION, pick(null, "1.1", "2.0", "2.1b"));
  }

  private Laser laser() {
    LaserSource source = LaserSource.values()[random.nextInt(LaserSource.values().length)];
    return new Laser(
        source,
        WAVELENGTHS[source.ordinal()],
        5 * (1 + random.nextInt(24)),
        Motion.values()[random.nextInt(2)],
        Emission.of(source == LaserSource.FIBRE ? Regime.NS : Regime.CW),
        maybe(100, 2),
        maybe(40, 0.5),
        null);
  }

  private List<TrialSnapshot> trials(Laser laser) {
    int count = random.nextInt(4) == 0 ? 2 + random.nextInt(8) : 1;
    List<TrialSnapshot> trials = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double speed = 10 * (1 + random.nextInt(100));
      double percent = 5 * (1 + random.nextInt(20));
      Settings settings =
          Trials.ofPercent(percent)
              .with(Setting.SPEED, speed)
              .with(Setting.LINE_SPACING, 0.05 + 0.01 * random.nextInt(8))
              .with(Setting.PASSES, random.nextInt(3) == 0 ? 2 : null)
              .with(Setting.FOCUS_OFFSET, maybe(0, 1))
              .with(Setting.AIR_ASSIST, random.nextInt(3) == 0 ? null : random.nextBoolean())
              .with(
                  Setting.DIRECTION,
                  random.nextBoolean() ? null : Direction.values()[random.nextInt(2)].code())
              .with(Setting.CROSS_PASS, random.nextBoolean() ? null : random.nextBoolean());
      double watt = laser.ratedPowerW() * percent / 100;
      Derived derived =
          new Derived(
              Map.of(DoseFormula.AVERAGE_POWER, watt, DoseFormula.AREAL_DOSE, watt / speed / 0.1));
      Effect effect = Effect.values()[random.nextInt(3)];
      trials.add(
          new TrialSnapshot(
              count == 1 ? null : i,
              count == 1 ? null : 0,
              settings,
              derived,
              effect,
              effect == Effect.RIGHT && random.nextBoolean() ? 1 + random.nextInt(5) : null,
              List.of()));
    }
    return trials;
  }

  private String pick(String... choices) {
    return choices[random.nextInt(choices.length)];
  }

  private Double maybe(double from, double step) {
    return random.nextInt(3) == 0 ? null : from + step * random.nextInt(5);
  }
}
