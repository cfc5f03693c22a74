package club.emberwell.web.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A lot with its share, its dose and its supplier, as people see them. */
@QuarkusTest
class SupplierPagesTest {
  private final String supplier = "Blanks of " + UUID.randomUUID();
  private Person ada;
  private Browser browser;

  @BeforeEach
  void signIn() {
    ada = People.join();
    browser = Browser.of(ada);
  }

  private String main() {
    return browser.page().selectFirst("main").text();
  }

  private Map<String, Object> lot(String batch, String date) {
    Map<String, Object> lot = new HashMap<>();
    lot.put("supplier", supplier);
    lot.put("batch", batch);
    lot.put("material", "slate");
    lot.put("received", 50);
    lot.put("usable", 46);
    lot.put("date", date);
    return lot;
  }

  private static void burned(Person by, String batch, int speed) {
    by.makes(
        "reports",
        Map.of(
            "laser",
            Map.of(
                "source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry"),
            "material",
            "slate",
            "process",
            "surface-engraving",
            "settings",
            Map.of("power", "60 %", "speed", speed + " mm/s", "lineSpacing", "0.1 mm"),
            "effect",
            "right",
            "lot",
            batch,
            "notes",
            "Words of " + UUID.randomUUID()));
  }

  @Test
  void aLotIsWrittenWithItsNumberItsInspectionAndWhetherItIsShared() {
    browser.get("/lots/new").tidy();
    assertTrue(main().contains("They never see who it was"), main());
    browser.send(
        "main form",
        Map.of(
            "supplier",
            supplier,
            "batch",
            "B-7",
            "material",
            "slate",
            "received",
            "50",
            "usable",
            "46",
            "inspection",
            "Two dents.",
            "shared",
            "true"));
    assertEquals(303, browser.status());
    String id = browser.get("/lots").page().selectFirst("main li a").attr("href");
    browser.get(id).tidy();
    // R: prop.test(46, 50, correct = FALSE): 0.8116 to 0.9685
    assertTrue(main().contains("92 % (95 % interval 81 % to 97 %)"), main());
    assertTrue(main().contains("Two dents."), main());
    assertTrue(main().contains("Write “B-7” as the lot of a report"), main());
    assertTrue(main().contains("without your name"), main());
    browser.get(id + "/edit").tidy();
    assertTrue(browser.page().selectFirst("input[name=shared]").hasAttr("checked"));
    Element form = browser.page().selectFirst("main form");
    form.selectFirst("input[name=shared]").removeAttr("checked");
    browser.send("main form", Map.of("inspection", "Three dents."));
    browser.follow();
    assertTrue(main().contains("Three dents."), main());
  }

  @Test
  void aLotThatNeedsAnotherDoseSaysSoOnItsPageAndInTheList() {
    int[] speeds = {400, 410, 390, 400, 300};
    String last = null;
    for (int i = 0; i < speeds.length; i++) {
      last = ada.makes("lots", lot("B-" + i, "2026-0" + (i + 1) + "-03"));
      burned(ada, "B-" + i, speeds[i]);
    }
    browser.get("/lots/" + last).tidy();
    assertTrue(main().contains("needs another dose than earlier ones: 1.33 times"), main());
    assertTrue(main().contains("Of 100 suppliers that never change"), main());
    assertEquals(5, browser.page().select("main svg circle").size());
    assertEquals(5, browser.page().select("main tbody tr").size());
    browser.get("/lots").tidy();
    assertEquals(1, browser.page().select("main .box-warn").size(), main());
  }

  @Test
  void aSupplierIsShownFromThreeMembersOn() {
    browser.get("/suppliers").tidy();
    assertEquals(200, browser.status());
    assertFalse(main().contains(supplier), main());
    for (Person member : List.of(ada, People.join(), People.join())) {
      Map<String, Object> lot = lot("B-1", "2026-05-04");
      lot.put("shared", true);
      member.makes("lots", lot);
    }
    browser.get("/suppliers?q=" + supplier.toUpperCase().replace(" ", "+")).tidy();
    Element link =
        browser.page().select("main li a").stream()
            .filter(a -> a.text().startsWith(supplier))
            .findFirst()
            .orElseThrow();
    browser.get(link.attr("href")).tidy();
    assertTrue(main().contains("138 of 150 usable"), main());
    assertTrue(main().contains("3, shared by 3 members"), main());
    assertTrue(main().contains("2026-05"), main());
    assertTrue(main().contains("We do not know yet whether lots of this supplier"), main());
    assertEquals(3, browser.page().select("main svg circle").size());
    browser.get("/lots/order").tidy();
    assertFalse(main().contains(supplier + ", shared by"), "one's own stand there already");
    Browser other = Browser.of(People.join()).get("/lots/order");
    assertTrue(
        other.page().selectFirst("main").text().contains(supplier + ", shared by 3 members"));
    other.get("/lots/order?lines.0.pieces=20&lots=" + supplier.replace(" ", "+"));
    assertTrue(
        other.page().selectFirst("main").text().contains("no lot of yours and 3 lots of other"),
        other.page().selectFirst("main").text());
    assertEquals(404, other.get("/suppliers/0123456789ab").status());
  }
}
