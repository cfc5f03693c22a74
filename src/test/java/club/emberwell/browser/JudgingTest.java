package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.grid.PlannedGrids;
import club.emberwell.grid.photo.DrawnGrid;
import club.emberwell.grid.photo.PhotoPlan;
import club.emberwell.member.Members;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Judging a burned grid beside the machine: by taps, by keys, without scripts, by its photo. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class JudgingTest extends BrowserTest {
  private static final int COLUMNS = 5;
  private static final int ROWS = 4;

  @Inject PlannedGrids grids;
  @Inject Members members;

  private String path;

  @BeforeEach
  void plan() {
    path = "/grids/" + grids.plan(members.byHandle(MEMBER).orElseThrow().actor(), COLUMNS, ROWS);
  }

  private static void assertSaid(Visit visit, String cell, String sentence) {
    assertThat(visit.one("#cell-" + cell)).hasAttribute("aria-label", sentence);
  }

  @Test
  void tapsOnAPhone() {
    try (Visit visit = as(MEMBER, Screen.PHONE)) {
      visit.open(path + "/results");
      assertSaid(visit, "0-0", "20 mm/s, 30 %, 1.5 J/mm²: not judged");
      assertThat(visit.one("#judged-count")).hasText("0 of 20 judged");
      assertThat(visit.one(".judging select[data-cell]").first()).isHidden();
      visit.one("#cell-0-0").tap();
      assertSaid(visit, "0-0", "20 mm/s, 30 %, 1.5 J/mm²: right");
      visit.one("#cell-0-1").tap();
      visit.one("#cell-0-1").tap();
      assertSaid(visit, "0-1", "20 mm/s, 40 %, 2 J/mm²: too little");
      for (int tap = 0; tap < 3; tap++) {
        visit.one("#cell-3-4").tap();
      }
      assertSaid(visit, "3-4", "50 mm/s, 70 %, 1.4 J/mm²: too much");
      for (int tap = 0; tap < 4; tap++) {
        visit.one("#cell-1-1").tap();
      }
      assertSaid(visit, "1-1", "30 mm/s, 40 %, 1.3 J/mm²: not judged");
      visit.one("#mark-best").tap();
      visit.one("#cell-2-2").tap();
      assertSaid(visit, "2-2", "40 mm/s, 50 %, 1.3 J/mm²: right, best");
      assertThat(visit.one("#judged-count")).hasText("4 of 20 judged");
      assertThat(visit.one("[data-detail='2.2']")).isVisible();
      assertThat(visit.one("[data-detail='0.0']")).isHidden();
      visit.page().fill("[name='defects.2.2']", "halo");
      BoundingBox send = visit.one(".judge-bar button").boundingBox();
      assertTrue(send.y + send.height <= Screen.PHONE.height, "Send is always in sight");
      assertTrue(
          (boolean) visit.page().evaluate("document.documentElement.scrollWidth <= innerWidth"),
          "the page scrolls sideways");
      visit.one(".judge-bar button").tap();
      visit.page().waitForURL(url -> url.contains("/reports/"));
      assertThat(visit.one(".cell-best")).containsText("Right, best");
      visit.one("main a[href$='/results']").tap();
      assertSaid(visit, "2-2", "40 mm/s, 50 %, 1.3 J/mm²: right, best");
      assertEquals(
          "halo", visit.page().inputValue("[name='defects.2.2']").toLowerCase(Locale.ROOT));
      visit.noComplaints();
    }
  }

  @Test
  void keysAlone() {
    try (Visit visit = as(MEMBER, Screen.DESK)) {
      visit.open(path + "/results#cell-1-1");
      assertThat(visit.one("#cell-1-1")).isFocused();
      press(visit, "r", "ArrowRight", "m", "ArrowDown", "l", "ArrowLeft", "Space", "b");
      assertSaid(visit, "1-1", "30 mm/s, 40 %, 1.3 J/mm²: right");
      assertSaid(visit, "1-2", "30 mm/s, 50 %, 1.7 J/mm²: too much");
      assertSaid(visit, "2-2", "40 mm/s, 50 %, 1.3 J/mm²: too little");
      assertSaid(visit, "2-1", "40 mm/s, 40 %, 1 J/mm²: right, best");
      press(visit, "ArrowUp", "n");
      assertThat(visit.one("#judged-count")).hasText("3 of 20 judged");
      press(visit, "Tab");
      assertThat(visit.one("#mark-best")).isFocused();
      visit.one(".judge-bar button").focus();
      press(visit, "Enter");
      visit.page().waitForURL(url -> url.contains("/reports/"));
      visit.noComplaints();
    }
  }

  private static void press(Visit visit, String... keys) {
    for (String key : keys) {
      visit.page().keyboard().press(key);
    }
  }

  @Test
  void plainFieldsWithoutScripts() {
    try (Visit visit = as(MEMBER, Screen.PHONE, false)) {
      visit.open(path + "/results");
      visit.page().selectOption("[name='effects.0.0']", "right");
      visit.page().selectOption("[name='effects.0.1']", "too-much");
      visit.page().selectOption("[name='best']", "0.0");
      visit.press(".judge-bar button");
      assertThat(visit.one(".cell-best")).containsText("Right, best");
      visit.noComplaints();
    }
  }

  @Test
  void cornersAreDraggedAndMovedByKeysAndTheTestsLeadToJudging() {
    try (Visit visit = as(MEMBER, Screen.PHONE)) {
      visit.open(path + "/photo");
      byte[] picture = DrawnGrid.png(new PhotoPlan(ROWS, COLUMNS, 8, 2));
      visit.page().setInputFiles("#photo", new FilePayload("grid.png", "image/png", picture));
      visit.press("main form[enctype] button");
      assertThat(visit.one(".corner")).hasCount(4);
      BoundingBox stage = visit.one(".corner-stage").boundingBox();
      List<String> names = List.of("topLeft", "topRight", "bottomRight", "bottomLeft");
      List<double[]> to =
          List.of(
              new double[] {0.22, 0.18},
              new double[] {0.83, 0.11},
              new double[] {0.91, 0.86},
              new double[] {0.12, 0.74});
      for (int i = 0; i < names.size(); i++) {
        drag(visit, stage, names.get(i), to.get(i));
      }
      assertEquals(22, value(visit, "topLeft.x"), 1);
      assertEquals(86, value(visit, "bottomRight.y"), 1);
      double before = value(visit, "topLeft.x");
      visit.one("#corner-topLeft").focus();
      press(visit, "ArrowRight", "ArrowRight", "Shift+ArrowRight", "Shift+ArrowLeft", "ArrowLeft");
      assertEquals(before + 0.25, value(visit, "topLeft.x"), 0.02);
      visit.press("form.corners button.primary");
      assertThat(visit.one("#seen .seen-table tbody tr")).hasCount(COLUMNS * ROWS);
      visit.press("#seen table a[href$='#cell-2-3']");
      assertThat(visit.one("#cell-2-3")).isFocused();
      assertThat(visit.one("[data-detail='2.3'] svg.crop")).isVisible();
      visit.noComplaints();
    }
  }

  private static double value(Visit visit, String name) {
    return Double.parseDouble(visit.page().inputValue("[name='" + name + "']"));
  }

  private static void drag(Visit visit, BoundingBox stage, String name, double[] to) {
    Page page = visit.page();
    page.locator("#corner-" + name).scrollIntoViewIfNeeded();
    BoundingBox now = page.locator(".corner-stage").boundingBox();
    BoundingBox grip = page.locator("#corner-" + name).boundingBox();
    page.mouse().move(grip.x + grip.width / 2, grip.y + grip.height / 2);
    page.mouse().down();
    page.mouse().move(now.x + to[0] * stage.width, now.y + to[1] * stage.height);
    page.mouse().up();
  }
}
