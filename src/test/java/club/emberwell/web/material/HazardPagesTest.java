package club.emberwell.web.material;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.api.member.Staff;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Role;
import club.emberwell.web.caution.TermLink;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HazardPagesTest {
  @Inject CatalogService catalog;
  @Inject Staff staff;

  private static Document page(String path) {
    Browser browser = new Browser().get(path);
    if (browser.status() == 303) {
      browser.follow();
    }
    assertEquals(200, browser.status(), path);
    return browser.tidy().page();
  }

  @Test
  void everyMaterialAndCoatingHasItsCardWithSubstancesSourcesAndLimits() {
    Catalog now = catalog.snapshot();
    for (TermKind kind : List.of(TermKind.MATERIAL, TermKind.COATING)) {
      for (Term term : now.vocabulary().terms(kind)) {
        String text = page(TermLink.card(term)).text();
        for (Caution caution : now.cautions().forTerm(kind, term.slug())) {
          assertTrue(text.contains(caution.rule().advice()), term.slug());
          caution
              .rule()
              .handling()
              .givesOff()
              .forEach(substance -> assertTrue(text.contains(substance), term.slug()));
          for (ExposureLimit limit : caution.rule().limits()) {
            assertTrue(text.contains(limit.authority()), term.slug());
          }
          caution
              .rule()
              .evidence()
              .sources()
              .forEach(source -> assertTrue(text.contains(source.name()), term.slug()));
        }
      }
    }
  }

  @Test
  void theFirstBoxSaysWhetherItMayBeBurnedAndWhatNotToDo() {
    Element first = page("/materials/pom/hazards").selectFirst("main section");
    assertTrue(first.hasClass("box-warn"));
    assertEquals("Only with special care", first.selectFirst("h2").text());
    assertTrue(first.text().contains("Working extraction to the outside."));
    assertTrue(first.text().contains("Never leave a running machine."));
    Element banned = page("/materials/pvc/hazards").selectFirst("main section");
    assertTrue(banned.hasClass("box-danger"));
    assertTrue(banned.text().startsWith("Prohibited: do not work it with a laser"));
    assertFalse(banned.text().contains("Extraction"));
  }

  @Test
  void bothSidesOfADisputeStandWithTheirJurisdiction() {
    Element disputed =
        page("/materials/pom/hazards").selectFirst("section[aria-labelledby=disputed]");
    String text = disputed.text();
    assertTrue(text.contains("UT Austin"), text);
    assertTrue(text.contains("prohibits it"), text);
    assertTrue(text.contains("CMU"), text);
    assertTrue(text.contains("approves it"), text);
    assertTrue(text.contains("a university's laser policy or list, United States"), text);
  }

  @Test
  void whatNobodyKnowsSaysHowToFindOut() {
    Element first = page("/materials/unknown-plastic/hazards").selectFirst("main section");
    assertEquals("Prohibited until you know what it is", first.selectFirst("h2").text());
    assertTrue(first.selectFirst("ol li").text().contains("safety data sheet"));
  }

  @Test
  void aNameThatTheListDoesNotHoldIsProhibitedUntilItIsKnown() {
    Element first = page("/materials?q=zorblax").selectFirst("#terms .box-danger");
    assertNotNull(first);
    assertTrue(first.text().contains("“zorblax” is not in our list"), first.text());
    assertTrue(first.text().contains("safety data sheet"), first.text());
  }

  @Test
  void cautionsLeadToTheCard() {
    assertNotNull(page("/materials/pom").selectFirst("main a[href=/materials/pom/hazards]"));
    // a club without an owner asks for one first
    staff.person(Role.OWNER);
    assertNotNull(page("/?material=pom").selectFirst(".cautions a[href=/materials/pom/hazards]"));
  }

  @Test
  void whatIsNotThereHasNoCard() {
    assertEquals(404, new Browser().get("/materials/zorblax/hazards").status());
  }
}
