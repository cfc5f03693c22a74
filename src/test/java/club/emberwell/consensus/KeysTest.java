package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.WorkKey;
import club.emberwell.laser.Process;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Which trials may share a range: each part that counts for a process keeps works apart. */
class KeysTest {
  /** Common practice, no source: the table of which parts decide a dose in which process. */
  private static final Map<Process, Set<Facet>> COUNTED =
      new EnumMap<>(
          Map.of(
              Process.SURFACE_ENGRAVING, Set.of(Facet.MATERIAL, Facet.COATING, Facet.COLOUR),
              Process.DEEP_ENGRAVING, Set.of(Facet.MATERIAL, Facet.COATING, Facet.COLOUR),
              Process.COATING_REMOVAL, Set.of(Facet.COATING, Facet.COLOUR),
              Process.COLOUR_MARKING, Set.of(Facet.MATERIAL, Facet.COATING, Facet.RESULT_COLOUR),
              Process.CUT, Set.of(Facet.MATERIAL, Facet.THICKNESS),
              Process.SCORE, Set.of(Facet.MATERIAL, Facet.COATING)));

  @ParameterizedTest
  @EnumSource(Process.class)
  void everyPartThatCountsParts(Process process) {
    for (Facet facet :
        List.of(
            Facet.MATERIAL,
            Facet.COATING,
            Facet.COLOUR,
            Facet.THICKNESS,
            Facet.RESULT_COLOUR,
            Facet.LOT)) {
      MadeTrials made = new MadeTrials();
      made.by(1).of(process).dose(1).with(Property.of(facet.code()), "one");
      made.by(2).of(process).dose(1).with(Property.of(facet.code()), "other");
      made.by(3).of(process).dose(1);
      boolean counts = COUNTED.get(process).contains(facet);
      assertEquals(counts ? 3 : 1, made.groups().size(), process + " by " + facet);
    }
  }

  @Test
  void whatNobodyStatedIsAWorkOfItsOwnAndSaysSo() {
    MadeTrials made = new MadeTrials();
    made.by(1).of(Process.CUT).dose(1).with(Property.MATERIAL, "Birch plywood");
    RangeKey key = made.group().key();
    assertFalse(key.work().part(Facet.THICKNESS).orElseThrow().stated());
    assertEquals("Birch plywood, thickness not stated", key.work().words());
    assertEquals("Birch plywood, thickness not stated: cut, 10.6 µm, continuous", key.words());
  }

  @Test
  void aBareBlankIsNotSaidToLackACoatingButAColourOfOneIs() {
    MadeTrials made = new MadeTrials();
    made.by(1).dose(1).with(Property.MATERIAL, "Slate");
    assertEquals("Slate", made.group().key().work().words());
    MadeTrials coated = new MadeTrials();
    coated.by(1).dose(1).with(Property.MATERIAL, "Steel").with(Property.COATING, "Powder coat");
    assertEquals("Steel, powder coat, colour not stated", coated.group().key().work().words());
  }

  /** Two words nobody knows are two works, and neither is a wildcard. */
  @Test
  void wordsThatAreNotFiledAreWorksByTheirWords() {
    MadeTrials made = new MadeTrials();
    made.by(1).dose(1).unfiled(Property.MATERIAL, "moon rock");
    made.by(2).dose(1).unfiled(Property.MATERIAL, "moon rock");
    made.by(3).dose(9).unfiled(Property.MATERIAL, "star dust");
    made.by(4).dose(1).with(Property.MATERIAL, "Slate");
    assertEquals(
        List.of("moon rock (not filed yet)", "Slate", "star dust (not filed yet)"),
        made.groups().stream().map(group -> group.key().work().words()).toList());
  }

  @Test
  void wavelengthsOutsideTheBandsShareARangeWithinOnePercentOnly() {
    MadeTrials made = new MadeTrials();
    for (double nm : new double[] {1940, 1945, 2800}) {
      made.by((long) nm).at(WavelengthBand.OTHER).with(Measure.WAVELENGTH, nm).dose(1);
    }
    List<Group> groups = made.groups();
    assertEquals(2, groups.size());
    assertEquals(2, groups.get(0).rows().length);
    assertEquals(1940, groups.get(0).key().light().nm(), 10);
    assertTrue(groups.get(1).key().words().contains("about 28"), groups.get(1).key().words());
  }

  /** Pooled, 3 and 6 mm gave "good evidence" for a middle that is wrong for both. */
  @Test
  void noMiddleStandsOverTwoThicknesses() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 10; member++) {
      made.by(member).of(Process.CUT).dose(5).with(Property.THICKNESS_CLASS, "3-mm");
      made.by(member).of(Process.CUT).dose(15).with(Property.THICKNESS_CLASS, "6-mm");
    }
    Set<Double> middles =
        made.groups().stream()
            .map(group -> ConsensusService.ranges(made.columns(), false))
            .flatMap(List::stream)
            .map(range -> range.dose().quantiles().orElseThrow().median())
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(Set.of(5.0, 15.0), middles);
  }

  @Test
  void theSamePartsAreTheSameWork() {
    WorkKey.Part slate = new WorkKey.Part("slate", "Slate");
    WorkKey one = new WorkKey(Map.of(Facet.MATERIAL, slate));
    assertEquals(one, one.with(Facet.COLOUR, slate).without(Facet.COLOUR));
    assertTrue(one.part(Facet.COATING).isEmpty());
  }
}
