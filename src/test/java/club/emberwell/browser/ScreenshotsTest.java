package club.emberwell.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.SelectOption;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Takes the pictures of the README's tour anew: {@code mvn test -Pscreenshots}. */
@QuarkusTest
@TestProfile(SeedProfile.class)
@Tag("screenshots")
class ScreenshotsTest extends BrowserTest {
  private static final Path FOLDER = Path.of("src", "site", "screenshots");
  private static final long MOST_BYTES = 200_000;
  private static final String NAVY = "/?material=stainless-steel&coating=powder-coat&colour=navy";
  private static final String BIRCH =
      "/range?material=birch-plywood&process=surface-engraving&source=diode";
  private static final String ASKED = "01930000-a002-727a-8171-7a97656412a9";
  private static final String JUDGED = "/grids/01930000-b001-744c-8204-3c5f414c343c";
  private static final String PHOTOGRAPHED = "01930000-0002-78d6-89ed-6556850cabfd";
  private static final String WHO = "fernhollow";

  @Override
  String folder() {
    return "seed-scenario";
  }

  @Override
  int takenBack() {
    return 1;
  }

  @Test
  void finding() throws IOException {
    for (Screen screen : Screen.values()) {
      try (Visit visit = chromium.visit(screen).open(NAVY)) {
        String size = screen == Screen.PHONE ? "phone" : "desk";
        shoot(visit, "find-" + size, ColorScheme.LIGHT);
      }
    }
    try (Visit visit = as(WHO, Screen.DESK).open(BIRCH)) {
      visit.press(".answer-machine > summary");
      visit.page().selectOption("select[name=machine]", new SelectOption().setIndex(1));
      visit.page().waitForURL(Pattern.compile(".*machine=.*"));
      shoot(visit, "range-desk", ColorScheme.LIGHT);
    }
    try (Visit visit = chromium.visit(Screen.PHONE).open("/materials/pvc")) {
      shoot(visit, "caution-phone-dark", ColorScheme.DARK);
    }
  }

  @Test
  void reading() throws IOException {
    try (Visit visit = chromium.visit(Screen.DESK)) {
      visit.open("/reports/" + PHOTOGRAPHED);
      shoot(visit, "report-desk", ColorScheme.LIGHT);
    }
    try (Visit visit = chromium.visit(Screen.PHONE).open("/ask/" + ASKED)) {
      shoot(visit, "question-phone", ColorScheme.LIGHT);
    }
  }

  @Test
  void testing() throws IOException {
    try (Visit visit = as(WHO, Screen.PHONE).open(NAVY)) {
      visit.press("main a[href^='/grids/plan']");
      shoot(visit, "plan-phone", ColorScheme.LIGHT);
    }
    try (Visit visit = as(WHO, Screen.PHONE).open(JUDGED + "/results")) {
      shoot(visit, "judging-phone", ColorScheme.LIGHT);
    }
    try (Visit visit = as(WHO, Screen.PHONE).open(JUDGED)) {
      visit.page().evaluate("document.querySelector('#burn-next').scrollIntoView()");
      shoot(visit, "next-phone-dark", ColorScheme.DARK);
    }
    try (Visit visit = as(WHO, Screen.DESK).open(JUDGED + "/sheet")) {
      shoot(visit, "sheet-desk", ColorScheme.LIGHT);
    }
  }

  @Test
  void writing() throws IOException {
    try (Visit visit = as(WHO, Screen.PHONE).open("/post")) {
      shoot(visit, "post-phone", ColorScheme.LIGHT);
    }
    try (Visit visit = as(MODERATOR, Screen.DESK).open("/desk")) {
      shoot(visit, "moderators-desk", ColorScheme.LIGHT);
    }
  }

  private static void shoot(Visit visit, String name, ColorScheme scheme) throws IOException {
    Page page = visit.page();
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    Path file = FOLDER.resolve(name + ".png");
    page.screenshot(new Page.ScreenshotOptions().setPath(file));
    assertTrue(Files.size(file) < MOST_BYTES, file + " has " + Files.size(file) + " bytes");
  }
}
