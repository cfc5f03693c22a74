package club.emberwell.browser;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ForcedColors;
import com.microsoft.playwright.options.ReducedMotion;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page state in light and dark, on a phone and at a desk, with everything unfolded, against
 * the automatic rules for WCAG 2.2 AA (axe-core 4.11) and what a browser complains of.
 */
@QuarkusTest
@TestProfile(ClubProfile.class)
class EveryPageTest extends BrowserTest {
  /** A page, or a form with what is wrong in it. */
  private static final Set<Integer> EXPECTED = Set.of(200, 401, 422);

  /** WCAG 2.2, 1.4.10 Reflow: content fits a width of 320 CSS pixels. */
  private static final int REFLOW = 320;

  /** Main actions; 24 px of 2.5.8 Target Size (Minimum) for all others is among the axe rules. */
  private static final int MAIN_TARGET = 44;

  private static final String SMALL_TARGETS =
      """
      least => [...document.querySelectorAll(`main button, .button, main select, main textarea,
          main input:not([type=hidden]):not([type=checkbox]):not([type=radio]), summary, .chip,
          .facet-value, .check, .choice, .places a, .account a, .account button`)]
        .filter(each => each.checkVisibility())
        .map(each => [each.outerHTML.slice(0, 90), each.getBoundingClientRect()])
        .filter(([html, box]) => box.height < least || box.width < least)
        .map(([html, box]) => `${Math.round(box.width)}x${Math.round(box.height)} ${html}`)
      """;

  private static final String SKELETON =
      """
      () => [
        [document.title.includes(' · '), 'title: ' + document.title],
        [document.querySelectorAll('h1').length === 1, 'not one h1'],
        [document.documentElement.lang === 'en', 'lang'],
        ...[...document.querySelectorAll('.skip-link')].map(link =>
          [document.querySelector(link.hash), 'skips to nothing: ' + link.hash]),
        ...[...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((each, i, all) =>
          [each.tagName[1] - (i ? all[i - 1].tagName[1] : 0) <= 1,
            'level skipped: ' + each.textContent])
      ].filter(([right]) => !right).map(([right, fault]) => fault)
      """;

  /** Stops of the Tab key from the start of the content to what was looked for. */
  private static final int STOPS_TO_THE_ANSWER = 8;

  /** The same from the answer to the list of reports, past the facets of an open group. */
  private static final int STOPS_TO_THE_RESULTS = 32;

  private static final String STOPS =
      """
      ([toAnswer, toResults]) => {
        const answer = document.querySelector(
          'main > .answer, .find-answer > .answer, .find-answer .works');
        const results = document.querySelector('#results .hit-table');
        const stops = [...document.querySelectorAll(`main a[href], main button, main select,
            main input:not([type=hidden]), main textarea, main summary, main [tabindex]`)]
          .filter(each => each.tabIndex >= 0 && each.checkVisibility());
        const before = (place, each) =>
          place.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_PRECEDING;
        const count = [
          answer ? stops.filter(each => before(answer, each)).length : 0,
          results ? stops.filter(each => before(results, each)
            && !each.closest('.find-answer, .find-form, .chips')).length : 0
        ];
        return [
          ...(count[0] > toAnswer ? [count[0] + ' stops before the answer'] : []),
          ...(count[1] > toResults ? [count[1] + ' stops before the results'] : [])
        ];
      }
      """;

  /** Links of one name lead to one place, so that a list of a page's links can be read. */
  private static final String NAMES =
      """
      () => {
        const places = new Map();
        for (const link of document.querySelectorAll('a[href]:not([tabindex="-1"])')) {
          const by = link.getAttribute('aria-labelledby');
          const name = (by
            ? by.split(' ').map(id => document.getElementById(id).textContent).join(' ')
            : link.getAttribute('aria-label') || link.textContent).replace(/\\s+/g, ' ').trim();
          places.set(name, (places.get(name) || new Set()).add(link.getAttribute('href')));
        }
        return [...places].filter(([name, to]) => to.size > 1)
          .map(([name, to]) => `${name}: ${[...to].slice(0, 3).join(' ')}`);
      }
      """;

  /** What is chosen looks unlike its neighbours, though all backgrounds may be gone. */
  private static final String TOLD_BY_COLOUR =
      """
      () => {
        const look = each => [null, '::before'].map(part => {
          const style = getComputedStyle(each, part);
          return [style.backgroundColor, style.borderTopWidth, style.borderBottomColor,
            style.fontWeight, style.textDecorationLine].join();
        }).join(';');
        const pairs = [
          ['.places a[aria-current]', '.places a:not([aria-current])'],
          ['.facet-value[aria-current]', '.facet-value:not([aria-current])'],
          ['.talk-tabs [aria-current]', '.talk-tabs a:not([aria-current])'],
          ['.choice input:checked + span', '.choice input:not(:checked) + span']
        ];
        return pairs.map(pair => pair.map(each => document.querySelector('body ' + each)))
          .filter(([chosen, other]) => chosen && other && look(chosen) === look(other))
          .map(([chosen]) => chosen.outerHTML.slice(0, 100));
      }
      """;

  private static final String MOVING =
      "() => document.getAnimations().map(each => each.effect.target.outerHTML.slice(0, 100))";

  private static final String LARGE_TEXT =
      "() => { document.documentElement.style.fontSize = '200%' }";

  private static final String BEYOND =
      """
      () => document.documentElement.scrollWidth <= document.documentElement.clientWidth ? []
        : [...document.querySelectorAll('body *')]
          .filter(each => each.checkVisibility()
            && each.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5
            && !each.closest('.table-wrap, .visually-hidden'))
          .slice(0, 5).map(each => each.outerHTML.slice(0, 120))
      """;

  /** All, or those that {@code -Dpages=RECIPE.*} names. */
  static Stream<PageState> pages() {
    Pattern wished = Pattern.compile(System.getProperty("pages", ".*"));
    return Stream.of(PageState.values()).filter(each -> wished.matcher(each.name()).matches());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void everyPageHoldsToTheRules(PageState state) {
    try (Visit visit = visit(state)) {
      state.reach(visit);
      List<String> faults = told("", visit, SKELETON, null);
      if (!EXPECTED.contains(visit.status()) && !state.isMissing()) {
        faults.add("answered with " + visit.status());
      }
      faults.addAll(told("", visit, STOPS, List.of(STOPS_TO_THE_ANSWER, STOPS_TO_THE_RESULTS)));
      faults.addAll(told("same name: ", visit, NAMES, null));
      visit.unfold();
      Axe axe = new Axe(visit.page());
      for (Screen screen : List.of(Screen.DESK, Screen.PHONE)) {
        visit.page().setViewportSize(screen.width, screen.height);
        faults.addAll(told(screen + " too small: ", visit, SMALL_TARGETS, MAIN_TARGET));
        faults.addAll(told(screen + " too wide: ", visit, BEYOND, null));
        // both sizes have the same colours
        List<String> broken = screen == Screen.DESK ? axe.allButContrast() : axe.everything();
        broken.forEach(each -> faults.add(screen + " " + each));
      }
      // the dark scheme changes colours and nothing else
      visit.page().emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
      axe.contrast().forEach(each -> faults.add("dark " + each));
      visit.page().setViewportSize(REFLOW, Screen.PHONE.height);
      faults.addAll(told(REFLOW + " too wide: ", visit, BEYOND, null));
      visit
          .page()
          .emulateMedia(
              new Page.EmulateMediaOptions()
                  .setForcedColors(ForcedColors.ACTIVE)
                  .setReducedMotion(ReducedMotion.REDUCE));
      faults.addAll(told("forced colours: ", visit, TOLD_BY_COLOUR, null));
      faults.addAll(told("moves: ", visit, MOVING, null));
      visit.page().evaluate(LARGE_TEXT);
      for (Screen screen : Screen.values()) {
        visit.page().setViewportSize(screen.width, screen.height);
        faults.addAll(told("200 % text, " + screen + " too wide: ", visit, BEYOND, null));
      }
      faults.addAll(visit.complaints());
      assertTrue(faults.isEmpty(), () -> state + "\n" + String.join("\n", faults));
    }
  }

  /** Pages that are only opened share what their browser keeps; who types begins anew. */
  private Visit visit(PageState state) {
    if (state.isOnlyOpened()) {
      return chromium.again(state.visitor);
    }
    return state.visitor == null ? chromium.visit(Screen.DESK) : as(state.visitor, Screen.DESK);
  }

  private static List<String> told(String where, Visit visit, String script, Object argument) {
    List<?> found = (List<?>) visit.page().evaluate(script, argument);
    return new ArrayList<>(found.stream().map(each -> where + each).toList());
  }

  @Test
  void aPageWithFaultsIsSeenToHaveThem() {
    try (Visit visit = chromium.visit(Screen.PHONE).open("/sign-in")) {
      Page page = visit.page();
      page.evaluate(
          """
          () => {
            document.querySelector('label[for=handle]').remove();
            const wide = document.createElement('p');
            wide.innerHTML = '<img alt="" width="2000" height="9"><i style="color: red"></i>';
            wide.className = 'brand';
            document.querySelector('main').append(wide);
            const button = document.querySelector('main button');
            button.className = '';
          }""");
      assertAll(
          () -> assertTrue(String.join(" ", new Axe(page).everything()).contains("label: ")),
          () -> assertFalse(told("", visit, SMALL_TARGETS, MAIN_TARGET).isEmpty()),
          () ->
              assertTrue(
                  String.join(" ", visit.complaints()).contains("Content Security Policy"),
                  visit.complaints().toString()));
      page.evaluate(
          """
          () => {
            const wide = document.createElement('pre');
            wide.append('W'.repeat(400));
            wide.className = 'table';
            document.body.append(wide);
            document.querySelector('main').insertAdjacentHTML('afterbegin',
              '<h6>Low</h6><a href="/a">Same</a><a href="/b">Same</a>');
            document.body.append(document.createElement('table'));
            const cell = document.querySelector('body > table').insertRow().insertCell();
            cell.append('W'.repeat(4));
            for (let i = 0; i < 99; i++) {
              document.querySelector('body > table').rows[0].insertCell().append('Wide');
            }
          }""");
      assertFalse(told("", visit, BEYOND, null).isEmpty());
      assertEquals(List.of("Same: /a /b"), told("", visit, NAMES, null));
      assertTrue(told("", visit, SKELETON, null).contains("level skipped: Low"));
    }
  }
}
