package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Group;
import club.emberwell.laser.Process;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Ratio;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Contrasts of a group. The ratio is checked against R's t.test on logs in {@code stats}. */
class ContrastsTest {
  /** Mean 0 and standard deviation 0.2245: t(6) = 2.447 gives 1.6 (1.3 to 2.0). */
  private static final double STEP = 0.2245 / 2.1602;

  private static List<Contrast> contrasts(MadeTrials made) {
    return Contrasts.of(made.group(), Map.of());
  }

  /** Of the work with this value, beside those of the other values. */
  private static List<Contrast> besideOthers(MadeTrials made, Facet facet, String own) {
    Map<Boolean, List<Group>> parted =
        made.groups().stream()
            .collect(
                Collectors.partitioningBy(
                    g -> g.key().work().part(facet).orElseThrow().value().equals(own)));
    return Contrasts.of(parted.get(true).get(0), Map.of(facet, parted.get(false)));
  }

  private static MadeTrials sevenWhoDidBoth() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 7; member++) {
      double own = Math.exp(0.3 * member);
      double ratio = 1.6 * Math.exp(STEP * (member - 4));
      made.by(member).dose(own).with(Property.COLOUR, "Black");
      made.by(member).dose(own * ratio).with(Property.COLOUR, "White");
    }
    return made;
  }

  @Test
  void membersWhoDidBothAreComparedWithThemselves() {
    List<Contrast> found = besideOthers(sevenWhoDidBoth(), Facet.COLOUR, "Black");
    assertEquals(1, found.size());
    assertEquals(
        "White took 1.6 (1.3 to 2.0) times the dose of black, 7 members who did both.",
        found.get(0).sentence());
    assertTrue(found.get(0).clear());
  }

  @Test
  void differentMembersAreComparedBelowThreePairsAndMarkedWeaker() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 8; member++) {
      String value = member % 2 == 0 ? "on" : "off";
      double dose = (member % 2 == 0 ? 2 : 1) * Math.exp(0.05 * member);
      made.by(member).dose(dose).with(Property.AIR_ASSIST, value);
    }
    Contrast found = contrasts(made).get(0);
    assertEquals(Ratio.Kind.UNPAIRED, found.ratio().kind());
    assertTrue(found.weaker());
    assertTrue(found.sentence().startsWith("Air assist on took 2.1 ("), found.sentence());
    assertTrue(found.sentence().contains("8 different members: weaker evidence"), found.sentence());
  }

  @Test
  void membersAreOnlyComparedWithThemselvesOnTheSameWork() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 5; member++) {
      removal(made, member, 1).with(Property.MATERIAL, "Steel").with(Property.AIR_ASSIST, "off");
      // ten times the dose, but on another substrate: no pair
      removal(made, member, 10).with(Property.MATERIAL, "Brass").with(Property.AIR_ASSIST, "on");
    }
    List<Contrast> found = contrasts(made);
    assertTrue(
        found.stream()
            .filter(c -> c.property() == Property.AIR_ASSIST)
            .noneMatch(c -> c.ratio().kind() == Ratio.Kind.PAIRED));
    Contrast substrate =
        found.stream().filter(c -> c.property() == Property.MATERIAL).findFirst().orElseThrow();
    assertEquals("Brass", substrate.more());
  }

  private static MadeTrials.Trial removal(MadeTrials made, long member, double dose) {
    return made.by(member).of(Process.COATING_REMOVAL).dose(dose);
  }

  @Test
  void thicknessesAreComparedAcrossRangesThatAreKeptApart() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 5; member++) {
      double own = Math.exp(0.1 * member);
      made.by(member).of(Process.CUT).dose(own).with(Property.of("thickness"), "3-mm");
      made.by(member)
          .of(Process.CUT)
          .dose((2 + 0.01 * member) * own)
          .with(Property.of("thickness"), "6-mm");
    }
    Contrast found = besideOthers(made, Facet.THICKNESS, "3-mm").get(0);
    assertEquals("6-mm", found.more());
    assertEquals(2.03, found.ratio().ratio(), 0.001);
  }

  @Test
  void aDifferenceWithinChanceIsSaidToBePerhapsChance() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 4; member++) {
      made.by(member).dose(1).with(Property.DIRECTION, "One-way");
      made.by(member).dose(member % 2 == 0 ? 1.2 : 0.9).with(Property.DIRECTION, "Two-way");
    }
    assertTrue(contrasts(made).get(0).sentence().endsWith("This may be chance."));
  }

  @Test
  void oneTypoAmongManyDoesNotMakeAContrast() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 12; member++) {
      made.by(member)
          .dose(Math.exp(0.05 * member))
          .with(Property.AIR_ASSIST, member <= 10 ? "on" : "off");
    }
    made.by(13).dose(60).with(Property.AIR_ASSIST, "on");
    Contrast found = contrasts(made).get(0);
    assertEquals(12, found.ratio().n());
    assertTrue(found.ratio().ratio() < 1.5, found.sentence());
  }
}
