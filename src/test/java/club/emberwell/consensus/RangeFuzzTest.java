package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.range.Group;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Whatever members post, a range is worked out in full and never fails. Seeded. */
class RangeFuzzTest {
  private static final double[] ODD = {0, 1e-300, 1e300, 1, 1, 1, 60, 0.5, 2};
  private final SplittableRandom random = new SplittableRandom(20261125);
  private final Cautions cautions = CatalogFiles.catalog().cautions();

  private double value() {
    return random.nextInt(4) == 0
        ? ODD[random.nextInt(ODD.length)]
        : Math.exp(random.nextGaussian());
  }

  private MadeTrials anything() {
    MadeTrials made = new MadeTrials();
    Process process = random.nextBoolean() ? Process.CUT : Process.COATING_REMOVAL;
    Regime regime = random.nextBoolean() ? Regime.CW : Regime.NS;
    int members = 1 + random.nextInt(14);
    int trials = 1 + random.nextInt(40);
    boolean onlyRight = random.nextInt(4) == 0;
    for (int i = 0; i < trials; i++) {
      MadeTrials.Trial trial =
          made.by(1 + random.nextInt(members))
              .on(random.nextInt(5))
              .of(process)
              .at(WavelengthBand.NEAR_INFRARED)
              .in(regime)
              .was(onlyRight ? Effect.RIGHT : Effect.values()[random.nextInt(3)]);
      for (Measure measure : Measure.all()) {
        if (random.nextInt(5) > 0) {
          trial.with(measure, value());
        }
      }
      if (random.nextInt(8) > 0) {
        trial.dose(value());
      }
      for (Property property : Property.all()) {
        if (random.nextInt(3) > 0) {
          trial.with(property, "v" + random.nextInt(3));
        }
      }
    }
    return made;
  }

  @Test
  void nothingPostedKeepsARangeFromBeingWorkedOut() {
    for (int run = 0; run < 1_500; run++) {
      MadeTrials made = anything();
      Laser mine =
          new Laser(
              LaserSource.FIBRE,
              1064,
              random.nextDouble(0.1, 100),
              Motion.GALVO,
              Emission.of(random.nextBoolean() ? Regime.CW : Regime.NS),
              null,
              random.nextBoolean() ? value() : null,
              random.nextBoolean() ? 1000.0 : null);
      RangeWork work = new RangeWork(cautions, new Reader(1, 1, mine), null);
      List<Group> groups = made.groups();
      int trials = 0;
      for (Group group : groups) {
        boolean coloured = group.key().work().part(Facet.COLOUR).isPresent();
        Map<Facet, List<Group>> others =
            coloured ? Map.of(Facet.COLOUR, others(group, groups)) : Map.of();
        RangeDetail detail =
            assertDoesNotThrow(
                () -> work.forReader(work.full(group, others), group, Optional.empty()),
                "run " + run);
        trials += detail.range().counts().trials();
        assertDoesNotThrow(() -> Explain.of(detail, Map.of()));
        for (Optional<Group> own : List.of(Optional.of(group), Optional.<Group>empty())) {
          assertDoesNotThrow(
              () -> Borrowing.of(own, group.key(), groups, Facet.COLOUR, "others"), "run " + run);
        }
      }
      assertEquals(made.size(), trials);
    }
  }

  private static List<Group> others(Group group, List<Group> all) {
    return all.stream()
        .filter(other -> other != group && other.key().work().part(Facet.COLOUR).isPresent())
        .toList();
  }
}
