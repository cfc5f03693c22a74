package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What stands behind a range, counted by hand, and how it is said. */
class CountsTest {

  /** Member 1 on two machines kept here, 2 and 3 with a laser described in the report only. */
  private static MadeTrials three(long otherMachine) {
    MadeTrials made = new MadeTrials();
    made.by(1).on(5).dose(1);
    made.by(1).on(otherMachine).dose(1.1);
    made.by(2).dose(1.2);
    made.by(2).dose(1.3).was(Effect.TOO_MUCH);
    made.by(3).dose(1.4);
    made.by(4).on(5).dose(0.2).was(Effect.TOO_LITTLE);
    return made;
  }

  @Test
  void trialsReportsVoicesAndMachinesAreCountedApart() {
    assertEquals(new Range.Counts(6, 6, 3, 4), three(6).range().counts());
    assertEquals(new Range.Counts(6, 6, 3, 3), three(5).range().counts());
    // numbers far apart are counted in another way, and alike
    assertEquals(new Range.Counts(6, 6, 3, 4), three(1L << 40).range().counts());
    assertEquals(new Range.Counts(6, 6, 3, 4), three(5 + (1 << 24)).range().counts());
  }

  @Test
  void theWorkOfMostVoicesComesFirstThenThatOfMostTrials() {
    MadeTrials made = new MadeTrials();
    made.by(1).of(Process.SCORE).dose(1);
    made.by(1).of(Process.SCORE).dose(1);
    made.by(1).of(Process.SCORE).dose(1);
    made.by(1).of(Process.CUT).at(WavelengthBand.BLUE).in(Regime.NS).dose(1);
    made.by(2).of(Process.CUT).at(WavelengthBand.BLUE).in(Regime.NS).dose(1);
    made.by(9).of(Process.DEEP_ENGRAVING).dose(1);
    made.by(9).of(Process.DEEP_ENGRAVING).dose(2);
    made.by(8).of(Process.SURFACE_ENGRAVING).dose(1).was(Effect.TOO_MUCH);
    made.by(7).of(Process.SURFACE_ENGRAVING).dose(1).was(Effect.TOO_MUCH);
    List<Group> groups = Group.split(made.columns());
    assertEquals(
        List.of(Process.CUT, Process.SCORE, Process.DEEP_ENGRAVING, Process.SURFACE_ENGRAVING),
        groups.stream().map(group -> group.key().process()).toList());
    assertEquals(WavelengthBand.BLUE, groups.get(0).key().band());
    assertEquals(Regime.NS, groups.get(0).key().regime());
  }

  private static Map<String, Explanation> explained(MadeTrials made) {
    RangeWork work = new RangeWork(CatalogFiles.catalog().cautions(), Reader.STRANGER, null);
    return Explain.of(work.full(made.group(), Map.of()), Map.of()).numbers().stream()
        .collect(Collectors.toMap(Explanation::number, one -> one));
  }

  private static MadeTrials tenAndOneFarOff() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 10; member++) {
      made.by(member).dose(1 + member / 50.0);
      made.by(member).dose(0.5).was(Effect.TOO_LITTLE);
    }
    made.by(11).dose(70);
    return made;
  }

  // order statistics of 10: 2nd to 9th cover 1 - 2 x 11/1024 = 97.9 %
  @Test
  void everyNumberSaysWhatItWasCountedFrom() {
    Map<String, Explanation> all = explained(tenAndOneFarOff());
    assertEquals(
        "11 members with right results, 21 trials in 21 reports", all.get("voices").counts());
    assertEquals("10 voices from 10 right trials", all.get("dose.median").counts());
    assertTrue(all.get("dose.medianLow").method().endsWith("true coverage 97.9 %."));
    assertEquals("1 voice of 11", all.get("dose.aside").counts());
    assertEquals("11 members, 11 right of 21 trials", all.get("success.share").counts());
    assertEquals("11 voices", all.get("evidence").counts());
    assertEquals("11 right trials state it, 1 of them set aside", all.get("dose").counts());
    assertEquals("11 members with 11 right trials", all.get("dose.nextLow").counts());
    assertTrue(all.get("dose").method().startsWith("Energy per area (dose, nominal)"));
  }

  @Test
  void oneIsCountedAsOne() {
    MadeTrials made = new MadeTrials();
    made.by(1).of(Process.SCORE).dose(1);
    Map<String, Explanation> all = explained(made);
    assertEquals("1 right trial states it", all.get("dose").counts());
    assertEquals("1 member with right results, 1 trial in 1 report", all.get("voices").counts());
    assertTrue(all.get("dose").method().startsWith("Energy per length (line dose, nominal)"));
    assertEquals(false, all.containsKey("dose.aside"));
  }

  @Test
  void voicesStandInTheOrderOfTheirValues() {
    MadeTrials made = MadeTrials.ofVoices(3, 1, 2);
    RangeWork work = new RangeWork(CatalogFiles.catalog().cautions(), Reader.STRANGER, null);
    Explanation.All all = Explain.of(work.full(made.group(), Map.of()), Map.of());
    assertEquals(
        List.of(1.0, 2.0, 3.0),
        all.voices().get(0).voices().stream().map(Explanation.Voice::value).toList());
  }

  /** Ten members; white takes 1/2 of the dose of black for each, so black takes twice that. */
  @Test
  void aContrastIsTurnedSoThatItsRatioIsAboveOne() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 6; member++) {
      double own = Math.exp(0.1 * member);
      double jitter = member % 2 == 0 ? 1.02 : 1 / 1.02;
      made.by(member).dose(own).with(Property.DIRECTION, "White");
      made.by(member).dose(2 * own * jitter).with(Property.DIRECTION, "Black");
    }
    made.by(7).dose(2).with(Property.DIRECTION, "Black");
    made.by(8).dose(1).with(Property.DIRECTION, "White");
    made.by(9).dose(1).with(Property.DIRECTION, "White");
    Contrast found = Contrasts.of(made.group(), Map.of()).get(0);
    assertEquals("Black", found.more());
    assertEquals("White", found.less());
    assertEquals(2, found.ratio().ratio(), 1e-9);
    assertTrue(found.ratio().interval().low() > 1.9 && found.ratio().interval().low() < 2);
    assertTrue(found.ratio().interval().high() < 2.1 && found.ratio().interval().high() > 2);
  }

  @Test
  void theClearestContrastComesFirst() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 8; member++) {
      String air = member % 2 == 0 ? "on" : "off";
      double own = Math.exp(0.2 * (member % 3));
      made.by(member).dose(own).with(Property.DIRECTION, "White").with(Property.AIR_ASSIST, air);
      made.by(member)
          .dose(2 * own * (1 + member / 100.0))
          .with(Property.DIRECTION, "Black")
          .with(Property.AIR_ASSIST, air);
    }
    List<Contrast> found = Contrasts.of(made.group(), Map.of());
    assertEquals(2, found.size());
    assertEquals(Property.DIRECTION, found.get(0).property());
    assertTrue(found.get(0).adjusted() < found.get(1).adjusted());
  }

  @Test
  void aMeasureThatNobodyGaveIsNotInTheRange() {
    MadeTrials made = new MadeTrials();
    made.by(1).dose(1).with(Measure.SPEED, 100);
    assertTrue(made.range().setting(Measure.SPEED).isPresent());
    assertTrue(made.range().setting(Measure.LINE_SPACING).isEmpty());
  }
}
