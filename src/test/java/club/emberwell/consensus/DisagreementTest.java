package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Evidence;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Camps among voices. The tests themselves are checked against R in {@code stats}. */
class DisagreementTest {

  private static Disagreement disagreement(MadeTrials made) {
    Group group = made.group();
    return Disagreement.of(group, Range.of(group, false).dose());
  }

  /** Two camps a factor apart, with a spread of exp(0.1) in each. */
  private static MadeTrials camps(int each, double factor, Property property, String... values) {
    SplittableRandom random = new SplittableRandom(5);
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 2 * each; member++) {
      int camp = member % 2;
      double dose = Math.exp(0.1 * random.nextGaussian()) * (camp == 0 ? 1 : factor);
      var trial = made.by(member).dose(dose).with(Property.MOTION, "Gantry");
      if (property != null) {
        trial.with(property, values[camp]);
      }
    }
    return made;
  }

  @Test
  void theRecordedPropertyThatPartsTheCampsIsNamed() {
    MadeTrials made = camps(6, 2, Property.AIR_ASSIST, "off", "on");
    Disagreement found = disagreement(made);
    assertTrue(found.found());
    assertEquals(Optional.of(Property.AIR_ASSIST), found.property());
    assertTrue(
        found
            .sentence()
            .startsWith("There are two groups of settings, by air assist: air assist on took "),
        found.sentence());
    assertTrue(found.sentence().endsWith("(6 and 6 members)."), found.sentence());
  }

  @Test
  void foundCampsMakeTheEvidenceSplit() {
    MadeTrials made = camps(6, 2, Property.AIR_ASSIST, "off", "on");
    RangeWork work = new RangeWork(CatalogFiles.catalog().cautions(), Reader.STRANGER, null);
    assertEquals(Evidence.SPLIT, work.full(made.group(), Map.of()).range().evidence());
    MadeTrials one = camps(6, 1, Property.AIR_ASSIST, "off", "on");
    assertFalse(work.full(one.group(), Map.of()).range().evidence() == Evidence.SPLIT);
  }

  @Test
  void campsThatNoRecordedPropertyExplainsAreSaidToBeUnexplained() {
    Disagreement found = disagreement(camps(12, 4, null));
    assertTrue(found.found());
    assertTrue(found.property().isEmpty());
    assertTrue(
        found.sentence().contains("Nothing that was recorded explains them"), found.sentence());
  }

  @Test
  void withoutCampsItSaysWhatWasTried() {
    Disagreement found = disagreement(camps(4, 1, Property.DIRECTION, "One-way", "Two-way"));
    assertFalse(found.found());
    assertTrue(found.sentence().contains("differ in direction"), found.sentence());
    assertTrue(found.sentence().contains("With 15 members we can check more"), found.sentence());
  }

  @Test
  void aVoiceWhoseOwnTrialsDifferIsLeftOutForThatProperty() {
    MadeTrials made = camps(6, 2, Property.AIR_ASSIST, "off", "on");
    made.by(1).dose(2).with(Property.AIR_ASSIST, "off");
    var split = disagreement(made).camps().orElseThrow().split().orElseThrow();
    assertEquals(11, split.lowVoices() + split.highVoices());
  }

  @Test
  void nothingRecordedAndFewVoicesIsNoReasonToFail() {
    assertFalse(disagreement(MadeTrials.ofVoices(1)).found());
    assertFalse(disagreement(MadeTrials.ofVoices(0, 1, 2)).found());
  }
}
