package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * From what others found to one's own test grid and back, on a phone: the answer, the plan, the
 * sheet, the results, what to burn next, and the result among those of others.
 */
@QuarkusTest
@TestProfile(ClubProfile.class)
class TestGridLoopTest extends BrowserTest {
  private static final String NAVY = "/?q=navy+powder+coat&source=diode";
  private static final String NEXT = "What to burn next";

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void fromTheAnswerToOnesOwnGridAndBack(boolean scripts) {
    try (Visit visit = as(MEMBER, Screen.PHONE, scripts)) {
      visit.open(NAVY).press("main a[href^='/grids/plan']");
      assertThat(visit.one("main")).containsText("tests on one blank");
      Locator save = visit.one("main form[method=post] button").first();
      assertTrue(save.boundingBox().y < Screen.PHONE.height, "Saving is in the first screen");
      save.click();
      assertThat(visit.page()).hasURL(Pattern.compile("/grids/[0-9a-f-]{36}/sheet"));
      assertThat(visit.one("main svg").first()).isVisible();
      visit.press("main a[href$='/results']");
      judge(visit, scripts);
      assertThat(visit.page()).hasURL(Pattern.compile("/reports/[0-9a-f-]{36}"));
      String report = visit.where().replaceFirst("[?#].*", "");
      visit.press("main a[href$='/results']");
      visit.open(visit.where().replaceFirst("/results.*", ""));
      assertThat(visit.one("main")).containsText(NEXT);
      visit.press("main a[href^='/grids/plan']");
      assertThat(visit.one("main")).containsText("tests on one blank");
      visit.open(NAVY + "&sort=newest");
      assertThat(visit.one("main a[href^='" + report + "']").first()).hasCount(1);
      visit.noComplaints();
    }
  }

  /** The lowest half of the doses too little, the rest right. */
  private static void judge(Visit visit, boolean scripts) {
    Locator cells = visit.one("main select[data-cell]");
    int tests = cells.count();
    assertTrue(tests >= 4, () -> "only " + tests + " tests");
    for (int i = 0; i < tests; i++) {
      if (scripts) {
        Locator cell = visit.one("main button[id^='cell-']").nth(i);
        for (int tap = 0; tap < 1 + i % 2; tap++) {
          cell.tap();
        }
      } else {
        cells.nth(i).selectOption(i % 2 == 0 ? "right" : "too-little");
      }
    }
    visit.press("main form[method=post] button[type=submit], main .judge-bar button");
  }

  @Test
  void aGridThatTheMachineCannotBurnIsRefusedAtItsField() {
    try (Visit visit = as(MEMBER, Screen.PHONE)) {
      visit.open(NAVY).press("main a[href^='/grids/plan']");
      visit.open(
          visit.where()
              + "&axes.across.setting=power&axes.across.values=50+%25&axes.down.setting=speed&axes.down.values=50+mm/s");
      assertThat(visit.one("#error-summary").first()).isVisible();
    }
  }
}
