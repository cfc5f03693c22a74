package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The main job with the keyboard alone; wherever the focus goes it can be seen. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class KeyboardTest extends BrowserTest {
  private static final int STEPS = 90;

  /** An outline of its own, or one drawn round the label of a hidden radio button. */
  private static final String SEEN =
      """
      () => {
        const active = document.activeElement;
        const drawn = active.matches('.choice input') ? active.nextElementSibling : active;
        const style = getComputedStyle(drawn);
        const box = drawn.getBoundingClientRect();
        return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2
          && box.width > 0 && box.bottom > 0 && box.top < innerHeight;
      }""";

  /** Presses Tab until the focus is there; on the way it must always be in sight. */
  private static void tabTo(Visit visit, String selector) {
    for (int step = 0; step < STEPS; step++) {
      visit.page().keyboard().press("Tab");
      assertTrue((boolean) visit.page().evaluate(SEEN), "lost the focus on " + active(visit));
      if ((boolean)
          visit.page().evaluate("selector => document.activeElement.matches(selector)", selector)) {
        return;
      }
    }
    throw new AssertionError(selector + " is not reached; the focus is on " + active(visit));
  }

  private static Object active(Visit visit) {
    return visit.page().evaluate("document.activeElement.outerHTML.slice(0, 200)");
  }

  private static void press(Visit visit, String key) {
    visit.page().keyboard().press(key);
  }

  private static void type(Visit visit, String name, String text) {
    tabTo(visit, "[name='" + name + "']");
    press(visit, "Control+A");
    visit.page().keyboard().type(text);
  }

  @ParameterizedTest
  @EnumSource(Screen.class)
  void findingNarrowingAndOpeningAReport(Screen screen) {
    try (Visit visit = chromium.visit(screen).open("/")) {
      tabTo(visit, ".skip-link");
      press(visit, "Enter");
      assertThat(visit.one("#main")).isFocused();
      type(visit, "q", "powder coat");
      press(visit, "Enter");
      assertThat(visit.one("#found section.works").first()).isVisible();
      tabTo(visit, "#group-laser > summary");
      press(visit, "Enter");
      tabTo(visit, "#source-diode");
      press(visit, "Enter");
      assertThat(visit.one(".chips a.chip:has-text('Diode')")).isVisible();
      assertEquals("source-diode", visit.page().evaluate("document.activeElement.id"));
      press(visit, "Enter");
      assertThat(visit.one(".chips a.chip:has-text('Diode')")).hasCount(0);
      tabTo(visit, ".hit th a[href^='/reports/']");
      press(visit, "Enter");
      assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}"));
      assertThat(visit.one("h1")).isVisible();
      visit.noComplaints();
    }
  }

  @Test
  void postingAResult() {
    try (Visit visit = as(MEMBER, Screen.DESK).open("/post?fresh=yes")) {
      tabTo(visit, "[name=machine]");
      visit.page().getByLabel("Glass tube 60").focus();
      press(visit, "Space");
      tabTo(visit, "[name=process]");
      visit.one("input[name=process][value=surface-engraving]").focus();
      press(visit, "Space");
      type(visit, "material", "slate");
      type(visit, "coating", "");
      type(visit, "colour", "");
      type(visit, "settings.power", "9 W");
      type(visit, "settings.speed", "50 mm/s");
      type(visit, "settings.lineSpacing", "0.1 mm");
      tabTo(visit, "[name=effect]");
      press(visit, "ArrowRight");
      assertThat(visit.one("input[name=effect]:checked")).hasCount(1);
      tabTo(visit, "form.post-form button.primary");
      press(visit, "Enter");
      assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}\\?saved"));
      visit.noComplaints();
    }
  }

  @Test
  void theFieldAtFaultGetsTheFocusAndTheListLeadsToItToo() {
    try (Visit visit = as(MEMBER, Screen.DESK).open("/post")) {
      type(visit, "settings.speed", "12 kg");
      press(visit, "Enter");
      assertThat(visit.one("[name='settings.speed']")).isFocused();
      visit.one("#error-summary a[href='#settings.speed']").focus();
      press(visit, "Enter");
      assertThat(visit.one("[name='settings.speed']")).isFocused();
    }
  }
}
