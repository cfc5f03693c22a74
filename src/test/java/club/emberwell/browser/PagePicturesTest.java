package club.emberwell.browser;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page as a person sees it, to be looked at: {@code mvn test -Pscreenshots
 * -Dtest=PagePicturesTest -Dpages=RECIPE.*} writes {@code target/pages}.
 */
@QuarkusTest
@TestProfile(ClubProfile.class)
@Tag("screenshots")
class PagePicturesTest extends BrowserTest {
  private static final Path FOLDER = Path.of("target", "pages");

  static Stream<PageState> pages() {
    return EveryPageTest.pages();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void onPhoneAndDeskByDayAndNight(PageState state) {
    for (Screen screen : Screen.values()) {
      try (Visit visit =
          state.visitor == null ? chromium.visit(screen) : as(state.visitor, screen)) {
        state.reach(visit);
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
          visit.page().emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
          String name = "%s-%s-%s.png".formatted(state, screen, scheme).toLowerCase();
          // the first screen alone in the dark: what is below has the same shapes
          visit
              .page()
              .screenshot(
                  new Page.ScreenshotOptions()
                      .setPath(FOLDER.resolve(name))
                      .setFullPage(scheme == ColorScheme.LIGHT));
        }
      }
    }
  }
}
