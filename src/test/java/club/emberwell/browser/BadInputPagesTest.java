package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What cannot be taken is said beside its field, and nothing that was typed is lost. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class BadInputPagesTest extends BrowserTest {
  private static final Map<String, String> TYPED =
      Map.of(
          "material", "stainless steel",
          "coating", "powder coat",
          "colour", "navy",
          "settings.power", "80 %",
          "settings.speed", "3000 mm/min",
          "settings.lineSpacing", "0.1 mm",
          "settings.passes", "2");

  /** A form filled in, but for these fields. */
  private Visit filled(boolean scripts, Map<String, String> but) {
    Visit visit = as(MEMBER, Screen.PHONE, scripts).open("/post?fresh=yes");
    Map<String, String> fields = new HashMap<>(TYPED);
    fields.putAll(but);
    visit.page().getByLabel("Glass tube 60").check();
    return visit
        .choose("process", "coating-removal")
        .fill(fields)
        .choose("effect", "right")
        .choose("quality", "4");
  }

  private static void everythingIsKept(Visit visit, Map<String, String> but) {
    Map<String, String> expected = new HashMap<>(TYPED);
    expected.putAll(but);
    expected.forEach((name, text) -> assertEquals(text, visit.value(name), name));
    assertThat(visit.one("input[name=process][value=coating-removal]")).isChecked();
    assertThat(visit.one("input[name=effect][value=right]")).isChecked();
    assertThat(visit.one("input[name=quality][value='4']")).isChecked();
  }

  private static void isSaved(Visit visit) {
    assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}\\?saved"));
  }

  private static Locator field(Visit visit, String name) {
    return visit.one("[id='at-" + name + "']");
  }

  @ParameterizedTest(name = "scripts {0}")
  @ValueSource(booleans = {true, false})
  void aUnitOfAnotherDimensionIsToldBesideItsField(boolean scripts) {
    int before = found();
    Map<String, String> bad = Map.of("settings.speed", "12 kg", "settings.passes", "two");
    try (Visit visit = filled(scripts, bad).send()) {
      for (String name : bad.keySet()) {
        assertThat(field(visit, name).locator(".field-error").first()).isVisible();
        assertThat(field(visit, name).locator("input[type=text]"))
            .hasAttribute("aria-invalid", "true");
      }
      everythingIsKept(visit, bad);
      assertTrue(visit.page().title().startsWith("Error: "), visit.page().title());
      Locator summary = visit.one("#error-summary");
      assertThat(summary).isVisible();
      if (scripts) {
        assertThat(field(visit, "settings.speed").locator("input[type=text]")).isFocused();
      }
      summary.locator("a[href='#settings.speed']").click();
      assertThat(field(visit, "settings.speed").locator("input[type=text]")).isInViewport();
      visit.noComplaints();
    }
    assertEquals(before, found());
  }

  @ParameterizedTest(name = "scripts {0}")
  @ValueSource(booleans = {true, false})
  void anAmbiguousNumberIsAskedAboutAndStoredAsChosen(boolean scripts) {
    int before = found();
    // the same result twice in a day would be doubted
    Map<String, String> twofold =
        Map.of("settings.speed", "1,000 mm/min", "colour", scripts ? "red" : "teal");
    try (Visit visit = filled(scripts, twofold).send()) {
      everythingIsKept(visit, twofold);
      Locator offers = field(visit, "settings.speed").locator("button:has-text('I mean')");
      assertEquals(2, offers.count());
      Locator thousand = offers.filter(new Locator.FilterOptions().setHasText("1000")).first();
      thousand.click();
      assertThat(field(visit, "settings.speed").locator(".field-error")).hasCount(0);
      String chosen = visit.value("settings.speed");
      assertTrue(chosen.matches("1[ \\u202f]?000 mm/min"), chosen);
      everythingIsKept(visit, Map.of("settings.speed", chosen, "colour", twofold.get("colour")));
      assertEquals(before, found());
      visit.send();
      isSaved(visit);
      visit.noComplaints();
    }
    assertEquals(before + 1, found());
  }

  @Test
  void theEnterKeySendsTheFormAndTakesNoneOfTheOffers() {
    try (Visit visit = filled(true, Map.of("settings.speed", "1,000 mm/min")).send()) {
      assertThat(field(visit, "settings.speed").locator("button").first()).isVisible();
      visit.one("main [name='settings.speed']").fill("1200 mm/min");
      visit.one("main [name='settings.speed']").press("Enter");
      isSaved(visit);
      assertThat(visit.one("main tr:has(th:text-is('Speed'))")).containsText("1200 mm/min");
    }
  }

  @ParameterizedTest(name = "scripts {0}")
  @ValueSource(booleans = {true, false})
  void aProhibitedMaterialTakesNoSettings(boolean scripts) {
    int before = found();
    Map<String, String> pvc = Map.of("material", "PVC banner", "coating", "", "colour", "white");
    try (Visit visit = filled(scripts, pvc).send()) {
      Locator danger = visit.one("main .box-danger");
      assertThat(danger).containsText("We do not share settings for");
      assertThat(danger).containsText(Pattern.compile("chlor", Pattern.CASE_INSENSITIVE));
      if (scripts) {
        assertThat(danger).isFocused();
      }
      assertThat(field(visit, "material").locator(".field-error").first()).isVisible();
      everythingIsKept(visit, pvc);
      visit.noComplaints();
    }
    assertEquals(before, found());
  }

  @ParameterizedTest(name = "scripts {0}")
  @ValueSource(booleans = {true, false})
  void anImplausibleValueIsStoredOnceItIsConfirmed(boolean scripts) {
    int before = found();
    Map<String, String> fast =
        Map.of("settings.speed", "90000 mm/s", "colour", scripts ? "red" : "teal");
    try (Visit visit = filled(scripts, fast).send()) {
      Locator doubt = visit.one("main .box-warn:has-text('Please check')");
      assertThat(doubt).isVisible();
      if (scripts) {
        assertThat(doubt).isFocused();
      }
      assertThat(field(visit, "settings.speed").locator(".field-warning").first()).isVisible();
      everythingIsKept(visit, fast);
      assertEquals(before, found());
      assertThat(visit.one("main form button.primary")).hasText("Save as it is");
      visit.send();
      isSaved(visit);
      visit.noComplaints();
    }
    assertEquals(before + 1, found());
  }

  @Test
  void aWavelengthInAnotherUnitIsToldOnTheMachineFormAndItsFoldStandsOpen() {
    try (Visit visit = as(MEMBER, Screen.PHONE).open("/bench/machines/new")) {
      Map<String, String> bad = Map.of("name", "Odd one", "ratedPower", "10", "wavelength", "5 W");
      visit.press("form.machine-form summary");
      visit.fill(bad).choose("source", "diode").choose("motion", "gantry").send();
      assertThat(visit.one("#ratedPower")).isFocused();
      for (String name : new String[] {"ratedPower", "wavelength"}) {
        assertThat(field(visit, name).locator(".field-error").first()).isVisible();
      }
      bad.forEach((name, text) -> assertEquals(text, visit.value(name)));
      assertThat(visit.one("input[name=source][value=diode]")).isChecked();
      visit.noComplaints();
    }
  }
}
