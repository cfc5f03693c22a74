package club.emberwell.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.ThicknessClass;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Process;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Interval;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Which trials of the invented club share a range: the works that statistics.md names. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class InventedWorksTest {
  private List<Group> groups;

  @BeforeAll
  void readTheClub() throws IOException {
    groups = InventedTrials.read().groups();
  }

  private Range plywood(String thickness) {
    return groups.stream()
        .filter(group -> isPlywood(group.key(), thickness))
        .findFirst()
        .map(Range::of)
        .orElseThrow();
  }

  private static boolean isPlywood(RangeKey key, String thickness) {
    return key.process() == Process.CUT
        && key.band() == WavelengthBand.CO2_10600
        && key.work().part(Facet.MATERIAL).orElseThrow().value().equals("birch-plywood")
        && key.work().part(Facet.THICKNESS).orElseThrow().value().equals(thickness);
  }

  /** Pooled they gave "good evidence, 3.8 to 11": whoever cuts 6 mm was outside the whole band. */
  @Test
  void threeAndSixMillimetresOfPlywoodAreTwoRangesThatDoNotMeet() {
    Range three = plywood("3-mm");
    Range six = plywood("6-mm");
    double thin = three.dose().quantiles().orElseThrow().median();
    double thick = six.dose().quantiles().orElseThrow().median();
    assertTrue(thick > 2 * thin, thin + " and " + thick);
    Interval band = three.dose().nextMember().orElseThrow();
    assertFalse(band.contains(thick), band + " holds " + thick);
  }

  @Test
  void noCutSharesARangeWithAnotherThickness() {
    Measure thickness =
        Measure.all().stream().filter(m -> m.code().equals("thickness")).findAny().orElseThrow();
    for (Group group : groups) {
      if (group.key().process() == Process.CUT) {
        long classes =
            Arrays.stream(group.rows())
                .mapToObj(row -> ThicknessClass.of(group.columns().values(thickness)[row]))
                .distinct()
                .count();
        assertEquals(1, classes, group.key().words());
      }
    }
  }

  /** Cork and ceramic tile were one range, "good, 0.89", while no material was chosen. */
  @Test
  void noMaterialSharesARangeWithAnotherWhereItDecides() {
    for (Group group : groups) {
      if (group.key().process() == Process.SURFACE_ENGRAVING) {
        long materials =
            Arrays.stream(group.rows())
                .map(row -> group.code(Property.MATERIAL, row))
                .distinct()
                .count();
        assertEquals(1, materials, group.key().words());
      }
    }
  }

  /** Before resulting colours were stated: 91 works, 75 with 3 or more voices, 59 with 6. */
  @Test
  void mostWorksKeepEnoughVoicesForARange() {
    long three = groups.stream().filter(group -> voices(group) >= 3).count();
    long six = groups.stream().filter(group -> voices(group) >= 6).count();
    assertTrue(three >= 75, three + " works with 3 or more voices");
    assertTrue(six >= 55, six + " works with 6 or more voices");
  }

  private static int voices(Group group) {
    return Range.brief(group).counts().voices();
  }
}
