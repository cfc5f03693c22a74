package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import com.microsoft.playwright.Locator;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The main job from a stranger's first look to their own result in the range. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class MainFlowTest extends BrowserTest {
  private static final String POWDER_COAT = "/?q=navy+powder+coat";
  private static final String BLUE = "main a[href*='source=diode'].facet-value";
  private static final int TAPS_FOR_A_RESULT = 8;

  @ParameterizedTest(name = "{0}, scripts {1}")
  @CsvSource({"PHONE,true", "PHONE,false", "DESK,true", "DESK,false"})
  void aStrangerFindsNarrowsReadsJoinsPostsAndIsCounted(Screen screen, boolean scripts) {
    try (Visit visit = chromium.visit(screen, scripts, null)) {
      find(visit);
      narrow(visit);
      Counted before = readTheRange(visit);
      String search = visit.where();
      join(visit);
      addMachine(visit);
      post(visit);
      visit.open(search);
      Counted after = count(visit);
      assertEquals(before.reports() + 1, after.reports());
      assertEquals(before.tests() + 1, after.tests());
      assertEquals(before.members() + 1, after.members());
      visit.noComplaints();
    }
  }

  private static void find(Visit visit) {
    visit.open("/").fill(Map.of("q", "navy powder coat")).press(".find-form button.primary");
    assertThat(visit.page()).hasURL(Pattern.compile(".*[?&]q=navy(\\+|%20)powder(\\+|%20)coat.*"));
    assertThat(visit.one("#found section.answer, #found section.works").first()).isVisible();
  }

  /** Choosing and taking away a value changes the address and nothing else holds the state. */
  private static void narrow(Visit visit) {
    String wide = visit.where();
    int all = reports(visit);
    chooseBlue(visit);
    int narrowed = reports(visit);
    assertTrue(narrowed < all, narrowed + " of " + all);
    visit.page().goBack();
    assertThat(found(visit)).hasText(Pattern.compile("^" + all + " reports.*"));
    assertEquals(wide, visit.where());
    visit.page().goForward();
    assertThat(found(visit)).hasText(Pattern.compile("^" + narrowed + " reports.*"));
    visit.press(".chips a.chip:has-text('Diode')");
    assertThat(found(visit)).hasText(Pattern.compile("^" + all + " reports.*"));
    assertEquals(wide, visit.where());
    chooseBlue(visit);
    assertEquals(narrowed, reports(visit));
  }

  private static void chooseBlue(Visit visit) {
    Locator value = visit.one(BLUE).first();
    if (!value.isVisible()) {
      visit.press("#group-laser > summary");
    }
    value.click();
    assertThat(visit.one(".chips a.chip:has-text('Diode')")).isVisible();
    assertTrue(visit.where().contains("source=diode"), visit.where());
  }

  /** The answer tells how many stand behind it, and has its picture as a table beneath. */
  private static Counted readTheRange(Visit visit) {
    Locator answer = visit.one("#found section.answer");
    assertThat(answer.locator("svg:visible").first()).isVisible();
    Locator fold = answer.locator("details.answer-fold:has(table)");
    Locator table = fold.locator("table").first();
    assertThat(table).isHidden();
    fold.locator("summary").first().click();
    assertThat(table).isVisible();
    return count(visit);
  }

  private static void join(Visit visit) {
    visit.press(".account a[href='/sign-up']");
    visit.fill(Map.of("handle", People.freshHandle(), "password", People.PASSWORD)).send();
    assertThat(visit.page()).hasURL(Pattern.compile(".*/bench$"));
  }

  private static void addMachine(Visit visit) {
    visit.press("main a[href='/bench/machines/new']");
    visit.choose("source", "diode").choose("motion", "gantry");
    visit.fill(Map.of("name", "Loft diode", "ratedPower", "10 W")).send();
    visit.press("main .box-good a[href='/post']");
  }

  private static void post(Visit visit) {
    visit.fill(
        Map.of(
            "material", "stainless steel",
            "coating", "powder coat",
            "colour", "navy",
            "settings.power", "80 %",
            "settings.speed", "2.2 in/s",
            "settings.lineSpacing", "318 dpi"));
    visit.choose("process", "coating-removal").choose("effect", "right").send();
    assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}\\?saved"));
    // 2.2 in/s is 55.88 mm/s: one inch is 25.4 mm exactly (international yard and pound agreement)
    assertThat(visit.one("main tr:has(th:text-is('Speed'))")).containsText("2.2 in/s");
    assertThat(visit.one("main tr:has(th:text-is('Speed'))")).containsText("55.88 mm/s");
  }

  @Test
  void aResultFromASavedMachineTakesAFewTaps() {
    try (Visit visit = as(MEMBER, Screen.PHONE)) {
      visit.open("/");
      int taps = 0;
      for (String target :
          new String[] {
            ".places a[href='/post']",
            "main [name='settings.speed']",
            "main input[name='effect'][value='right'] + span",
            "main input[name='quality'][value='4'] + span",
            "main form.post-form button.primary"
          }) {
        visit.one(target).tap(new Locator.TapOptions().setForce(true));
        taps++;
        if (target.contains("speed")) {
          visit.page().keyboard().press("Control+A");
          visit.page().keyboard().type("4200 mm/min");
        }
      }
      assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}\\?saved"));
      assertTrue(taps <= TAPS_FOR_A_RESULT, taps + " taps");
      assertFalse(visit.one("main").innerText().isBlank());
      visit.noComplaints();
    }
  }

  @Test
  void anAddressIsTheWholeStateForSomebodyElse() {
    try (Visit one = chromium.visit(Screen.DESK);
        Visit other = chromium.visit(Screen.PHONE)) {
      one.open(POWDER_COAT);
      chooseBlue(one);
      assertThat(one.one(".chips a.chip:has-text('Diode')")).isVisible();
      other.open(one.where());
      assertEquals(count(one), count(other));
    }
  }

  /** What the page says stands behind its answer. */
  private record Counted(int reports, int tests, int members) {}

  private static Counted count(Visit visit) {
    String text = visit.one("#found section.answer p:has(.evidence)").innerText();
    return new Counted(reports(visit), number(text, "test"), number(text, "member"));
  }

  private static Locator found(Visit visit) {
    return visit.one("#found .found-line");
  }

  private static int reports(Visit visit) {
    return number(found(visit).innerText(), "report");
  }

  private static int number(String text, String unit) {
    Matcher matcher = Pattern.compile("(\\d+) " + unit).matcher(text);
    assertTrue(matcher.find(), unit + " in: " + text);
    return Integer.parseInt(matcher.group(1));
  }
}
