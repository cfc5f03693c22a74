package club.emberwell.browser;

import club.emberwell.exchange.bench.Zips;
import club.emberwell.grid.photo.DrawnGrid;
import club.emberwell.member.mail.LetterKind;
import club.emberwell.member.mail.Unsubscribing;
import com.microsoft.playwright.options.FilePayload;
import jakarta.enterprise.inject.spi.CDI;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.Map;
import java.util.UUID;

/** Ways to pages that take more than an address. */
final class PageWays {
  /** A test grid of the scenario. */
  static final String GRID = "01930000-0613-71ca-babf-436437a1c9d5";

  /** A question of the scenario with two answers. */
  static final String ASKED = "01930000-a002-727a-8171-7a97656412a9";

  /** An answer of {@link BrowserTest#MEMBER}. */
  static final String ANSWERED = "01930000-b027-7c00-8000-00007a1c0027";

  private PageWays() {}

  static Visit lot(Visit v, String date, String usable) {
    return v.open("/lots/new")
        .fill(
            Map.of(
                "supplier",
                "North Blanks",
                "batch",
                "B-" + date,
                "material",
                "steel tumbler",
                "received",
                "50",
                "usable",
                usable,
                "date",
                date,
                "inspection",
                "Two dents."))
        .send()
        .arrive("/lots?");
  }

  static Visit joined(Visit v) {
    return v.open("/desk/suppliers/join?spelling=North+Blanks+GmbH")
        .fill(Map.of("supplier", "North Blanks", "reason", "One shop."))
        .send()
        .arrive("/desk/suppliers?");
  }

  static void slate(Visit visit, String material, String speed) {
    visit
        .open("/post?fresh=yes")
        .fill(Map.of("material", material, "coating", "", "colour", "", "settings.speed", speed))
        .choose("process", "surface-engraving")
        .choose("effect", "right")
        .send();
  }

  static Visit recipe(Visit visit) {
    return visit
        .open("/?q=navy+powder+coat&source=diode")
        .press(".answer a[href^='/recipes/new?machine']")
        .fill(
            Map.of("name", "Tumblers " + System.nanoTime(), "folder", "Fair", "notes", "Mask it."))
        .send();
  }

  static Visit revised(Visit visit) {
    return PageWays.recipe(visit)
        .press("main a[href$='/edit']")
        .fill(Map.of("settings.passes", "2", "reason", "One pass left a haze."))
        .send()
        .press("main a[href$='/revisions']");
  }

  static Visit cardLink(Visit visit) {
    return PageWays.recipe(visit)
        .press("main a[href$='/card']")
        .press("main a[href$='/links']")
        .press("main form button");
  }

  static Visit table(Visit visit) {
    return visit
        .open("/recipes/import")
        .fill(
            Map.of(
                "table",
                "Name,Material,Speed (mm/min),Power,Tool\nCoasters,maple,fast,60 %,tube\n"
                    + "Banner,PVC,1200,60 %,tube"))
        .send();
  }

  static Visit grid(Visit visit) {
    return visit
        .open("/?q=navy+powder+coat&source=diode")
        .press(".answer a[href^='/grids/plan']")
        .press(".plan form button")
        .press(".sheet a.tap");
  }

  static void seen(Visit visit) {
    PageWays.grid(visit).press("main a[href$='/photo']");
    FilePayload photo = new FilePayload("a.png", "image/png", DrawnGrid.png());
    visit.page().setInputFiles("#photo", photo);
    visit.press("main form[enctype] button").press("form.corners button.primary");
  }

  static Visit copy(Visit visit) {
    visit.open("/bench/copy");
    try {
      visit
          .page()
          .setInputFiles("#file", new FilePayload("bench.zip", "application/zip", Zips.mixed()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return visit.press("form[action='/bench/copy'] button");
  }

  /** As it stands in a letter to somebody who has no watches. */
  static String unsubscribing() {
    return URI.create(
            CDI.current()
                .select(Unsubscribing.class)
                .get()
                .link(UUID.randomUUID(), LetterKind.WATCH))
        .getPath();
  }

  /** Until the one that was asked for is kept. */
  static Visit backups(Visit visit) {
    visit.open("/desk/club/backups");
    if (visit.page().locator("#newest").count() == 0) {
      visit.press("main form[action='/desk/club/backups'] button");
    }
    while (visit.page().locator("#newest").count() == 0) {
      visit.page().waitForTimeout(100);
      visit.open("/desk/club/backups");
    }
    return visit;
  }

  static Visit glasses(Visit visit, String name) {
    visit
        .open("/eyewear/new")
        .fill(Map.of("name", name, "marking", "OD 2 @ 400-460 nm\nD 10600 LB4"))
        .send();
    return visit.open("/eyewear").press("main li.card:last-child h2 a");
  }

  static Visit own(Visit visit) {
    return visit.open("/bench").press(".hit th a[href^='/reports/']");
  }
}
