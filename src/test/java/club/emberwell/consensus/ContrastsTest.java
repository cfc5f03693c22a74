package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.search.query.Property;
import club.emberwell.stats.Ratio;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Contrasts of a group. The ratio is checked against R's t.test on logs in {@code stats}. */
class ContrastsTest {
  /** Mean 0 and standard deviation 0.2245: t(6) = 2.447 gives 1.6 (1.3 to 2.0). */
  private static final double STEP = 0.2245 / 2.1602;

  private static List<Contrast> contrasts(MadeTrials made) {
    return Contrasts.of(made.group(), made.group());
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
    List<Contrast> found = contrasts(sevenWhoDidBoth());
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
      made.by(member).dose(1).with(Property.MATERIAL, "Slate").with(Property.AIR_ASSIST, "off");
      // ten times the dose, but on another material: no pair
      made.by(member).dose(10).with(Property.MATERIAL, "Oak").with(Property.AIR_ASSIST, "on");
    }
    assertTrue(contrasts(made).stream().noneMatch(c -> c.ratio().kind() == Ratio.Kind.PAIRED));
  }

  @Test
  void theColourContrastIsDrawnFromAllColoursWhateverTheQueryChose() {
    MadeTrials chosen = new MadeTrials();
    chosen.by(1).dose(1).with(Property.COLOUR, "Black");
    List<Contrast> found = Contrasts.of(chosen.group(), sevenWhoDidBoth().group());
    assertEquals(7, found.get(0).ratio().n());
    assertEquals("White", found.get(0).more());
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
