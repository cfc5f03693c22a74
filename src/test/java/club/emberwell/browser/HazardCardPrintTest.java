package club.emberwell.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A hazard card on paper and on the first screen of a phone. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class HazardCardPrintTest extends BrowserTest {
  /** A page of a PDF; their list is called {@code /Pages}. */
  private static final Pattern PAGE = Pattern.compile("/Type\\s*/Page(?![a-z])");

  /** Those with the most to say. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/materials/pom/hazards",
        "/materials/pvc/hazards",
        "/materials/unknown-plastic/hazards",
        "/materials/chrome-tanned-leather/hazards",
        "/materials/polycarbonate/hazards",
        "/materials/brass/hazards",
        "/materials/veneered-mdf/hazards",
        "/materials/coating/old-paint/hazards"
      })
  void itIsOnePageOfA4WithoutControls(String path) {
    try (Visit visit = chromium.visit(Screen.DESK).open(path)) {
      byte[] pdf = visit.page().pdf(new Page.PdfOptions().setFormat("A4"));
      long pages = PAGE.matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results().count();
      assertEquals(1, pages, path);
      visit.page().emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      assertEquals(
          0, visit.page().locator("main button:visible, main a.button:visible").count(), path);
    }
  }

  @Test
  void theFirstScreenOfAPhoneSaysWhetherWithWhatAndWhatNot() {
    try (Visit visit = chromium.visit(Screen.PHONE).open("/materials/pom/hazards")) {
      for (String line :
          new String[] {
            "Only with special care",
            "Working extraction to the outside.",
            "Do not leave it: its flame is hard to see."
          }) {
        boolean inSight =
            (boolean)
                visit
                    .page()
                    .getByText(line)
                    .first()
                    .evaluate("line => line.getBoundingClientRect().bottom <= innerHeight");
        assertTrue(inSight, line);
      }
    }
  }
}
