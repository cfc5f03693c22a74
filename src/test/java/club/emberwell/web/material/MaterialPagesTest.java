package club.emberwell.web.material;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.web.caution.TermLink;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

@QuarkusTest
class MaterialPagesTest {
  @Inject CatalogService catalog;

  private static Document page(String path) {
    Browser browser = new Browser().get(path);
    assertEquals(200, browser.status(), path);
    return browser.tidy().page();
  }

  @Test
  void everyMaterialAndCoatingIsListedAndHasItsPage() {
    Document list = page("/materials");
    List<String> links = list.select("#terms a").eachAttr("href");
    for (TermKind kind : List.of(TermKind.MATERIAL, TermKind.COATING)) {
      for (Term term : catalog.vocabulary().terms(kind)) {
        String address = TermLink.address(term);
        assertTrue(links.contains(address), address);
        assertTrue(page(address).text().contains(term.label()), address);
      }
    }
  }

  @Test
  void theListNarrowsToAnyNameOfAThing() {
    Term acrylic = catalog.vocabulary().resolve(TermKind.MATERIAL, "acrylic").term().orElseThrow();
    Document plain = page("/materials?q=acrylic");
    assertTrue(plain.select("#terms a").eachAttr("href").contains(TermLink.address(acrylic)));
    for (String synonym : acrylic.synonyms()) {
      String address = "/materials?q=" + URLEncoder.encode(synonym, StandardCharsets.UTF_8);
      assertTrue(
          page(address).select("#terms a").eachAttr("href").contains(TermLink.address(acrylic)),
          synonym);
    }
    assertTrue(plain.select("#terms a").size() < page("/materials").select("#terms a").size());
    assertEquals(
        plain.select("details.branch").size(), plain.select("details.branch[open]").size());
  }

  @Test
  void aNameThatIsProhibitedShowsItsCardFirst() {
    Document list = page("/materials?q=pvc");
    assertNotNull(list.selectFirst("#terms > .cautions:first-child > .box-danger:first-child"));
    Term pvc = catalog.vocabulary().resolve(TermKind.MATERIAL, "pvc").term().orElseThrow();
    Document term = page(TermLink.address(pvc));
    assertTrue(term.selectFirst("section").hasClass("box-danger"));
    assertTrue(term.select("main a[href=" + TermLink.search(pvc) + "]").isEmpty());
    assertTrue(term.text().contains("We do not share settings for PVC (vinyl)."));
  }

  @Test
  void everyCautionStandsWithAgentAdviceSourceAndLimits() {
    Catalog now = catalog.snapshot();
    for (Term term : now.vocabulary().terms(TermKind.MATERIAL)) {
      String text = page(TermLink.address(term)).text();
      for (Caution caution : now.cautions().forTerm(TermKind.MATERIAL, term.slug())) {
        for (String part :
            List.of(
                caution.rule().agent(),
                caution.rule().hazard(),
                caution.rule().claim(),
                caution.rule().advice(),
                caution.rule().evidence().source(),
                caution.rule().evidence().jurisdiction().replaceFirst("^general", "everywhere"))) {
          assertTrue(
              text.contains(part.strip().replaceAll("\\s+", " ")), term.slug() + ": " + part);
        }
        for (ExposureLimit limit : caution.rule().limits()) {
          String shown = limit.value().replace("ug/", "µg/").replace("/m3", "/m³");
          assertTrue(text.contains(shown), shown);
        }
        if (caution.rule().evidence().disputed()) {
          assertTrue(text.contains("Sources disagree."), term.slug());
        }
      }
      assertTrue(text.contains("your local rules"), term.slug());
    }
  }

  @Test
  void whatNobodyKnowsIsSaidAndNothingIsImplied() {
    Document list = page("/materials?q=zzyzx");
    assertTrue(list.text().contains("No material has this name here"));
    String implied = list.text().replace("No caution does not mean it is safe.", "");
    assertFalse(implied.matches("(?i).*\\bis safe\\b.*"));
    given().get("/materials/zzyzx").then().statusCode(404);
    given().get("/materials/coating/zzyzx").then().statusCode(404);
    assertEquals(200, given().queryParam("q", "<b>x".repeat(100)).get("/materials").statusCode());
  }
}
