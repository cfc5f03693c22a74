package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.laser.Effect;
import club.emberwell.member.Members.Named;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ExplainTest {

  private static RangeDetail detail(MadeTrials made) {
    RangeWork work = new RangeWork(CatalogFiles.catalog().cautions(), Reader.STRANGER, null);
    return work.full(made.groups().get(0), Map.of());
  }

  private static MadeTrials tenVoices() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 10; member++) {
      made.by(member)
          .dose(1 + member / 50.0)
          .with(Measure.SPEED, 100 + member)
          .with(Property.AIR_ASSIST, member % 2 == 0 ? "on" : "off");
      made.by(member).dose(0.5).was(Effect.TOO_LITTLE);
    }
    made.by(11).dose(70);
    return made;
  }

  @Test
  void everyNumberHasItsMethodSourceAndCounts() {
    Explanation.All all = Explain.of(detail(tenVoices()), Map.of());
    List<String> numbers = all.numbers().stream().map(Explanation::number).toList();
    assertTrue(
        numbers.containsAll(
            Set.of(
                "dose",
                "voices",
                "dose.median",
                "dose.medianLow",
                "dose.nextLow",
                "dose.aside",
                "settings.speed.median",
                "settings.speed.medianLow",
                "settings.speed.nextLow",
                "success.share",
                "evidence",
                "window",
                "between",
                "camps",
                "contrasts")),
        numbers.toString());
    for (Explanation one : all.numbers()) {
      assertFalse(one.method().isBlank(), one.number());
      assertFalse(one.source().isBlank(), one.number());
      assertFalse(one.counts().isBlank(), one.number());
    }
  }

  @Test
  void theVoicesAreNamedInOrderAndThoseSetAsideAreMarked() {
    RangeDetail detail = detail(tenVoices());
    assertEquals(11, Explain.members(detail.range()).size());
    Explanation.All all =
        Explain.of(detail, Map.of(1L, new Named(null, "ada"), 11L, new Named(null, "bo")));
    List<Explanation.Voice> dose = all.voices().get(0).voices();
    assertEquals(11, dose.size());
    assertEquals("ada", dose.get(0).handle());
    assertEquals("former member", dose.get(1).handle());
    assertEquals("bo", dose.get(10).handle());
    assertTrue(dose.get(10).aside());
    assertFalse(dose.get(9).aside());
  }

  @Test
  void cautionsOfTheWorkComeWithEveryRange() {
    MadeTrials made = new MadeTrials();
    made.by(4).dose(1).with(Property.MATERIAL, "polycarbonate");
    assertTrue(detail(made).cautions().stream().anyMatch(caution -> caution.because().isPresent()));
    assertFalse(detail(MadeTrials.ofVoices(1)).cautions().isEmpty());
  }
}
