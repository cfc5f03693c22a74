package club.emberwell.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import java.net.URL;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Debian's Chromium, started once per test class; every visit has a profile of its own. */
final class Chromium implements AutoCloseable {
  private static final Path EXECUTABLE = Path.of("/usr/bin/chromium");
  private static final List<String> ARGUMENTS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  private final Playwright playwright;
  private final Browser browser;
  private final String base;
  private final Map<String, String> keptBy = new HashMap<>();
  private final Map<String, Visit> shared = new HashMap<>();

  private Chromium(Playwright playwright, Browser browser, String base) {
    this.playwright = playwright;
    this.browser = browser;
    this.base = base;
  }

  static Chromium start(URL base) {
    Playwright playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    BrowserType.LaunchOptions options =
        new BrowserType.LaunchOptions().setExecutablePath(EXECUTABLE).setArgs(ARGUMENTS);
    String address = base.toString().replaceAll("/$", "");
    return new Chromium(playwright, playwright.chromium().launch(options), address);
  }

  Visit visit(Screen screen) {
    return visit(screen, true, null);
  }

  /**
   * @param scripts false for somebody whose browser runs none
   * @param signedIn what an earlier visit kept, or null
   */
  Visit visit(Screen screen, boolean scripts, String signedIn) {
    return new Visit(context(screen, scripts, signedIn, null));
  }

  /**
   * The one page at a desk that this person goes through one address after the other with, since a
   * page anew costs a second.
   *
   * @param handle null for a stranger
   */
  Visit again(String handle) {
    return shared
        .computeIfAbsent(
            handle == null ? "" : handle,
            who ->
                new Visit(
                    context(Screen.DESK, true, handle == null ? null : kept(handle), null), false))
        .anew(Screen.DESK);
  }

  /** A visit of somebody of the club where it is another time. */
  Visit as(String handle, ZoneId where, boolean scripts) {
    return new Visit(context(Screen.PHONE, scripts, kept(handle), where.getId()));
  }

  private BrowserContext context(Screen screen, boolean scripts, String signedIn, String zone) {
    Browser.NewContextOptions options =
        new Browser.NewContextOptions()
            .setBaseURL(base)
            .setViewportSize(screen.width, screen.height)
            .setHasTouch(screen.touch)
            .setJavaScriptEnabled(scripts)
            .setServiceWorkers(ServiceWorkerPolicy.BLOCK);
    if (signedIn != null) {
      options.setStorageState(signedIn);
    }
    if (zone != null) {
      options.setTimezoneId(zone);
    }
    return browser.newContext(options);
  }

  /** A visit of somebody of the club, who signs in once for all visits. */
  Visit as(String handle, Screen screen, boolean scripts) {
    return visit(screen, scripts, kept(handle));
  }

  private String kept(String handle) {
    return keptBy.computeIfAbsent(handle, this::signedIn);
  }

  private String signedIn(String handle) {
    try (Visit visit = visit(Screen.DESK)) {
      return visit.signIn(handle, ClubProfile.PASSWORD).kept();
    }
  }

  /**
   * A phone with a service worker, which no other visit has.
   *
   * @param address of the server as this phone calls it
   */
  Visit phone(String address) {
    return new Visit(
        browser.newContext(
            new Browser.NewContextOptions()
                .setBaseURL(address)
                .setViewportSize(Screen.PHONE.width, Screen.PHONE.height)
                .setHasTouch(Screen.PHONE.touch)));
  }

  /** The same in a browser of its own, which remembers what it kept when it is opened again. */
  Visit phone(String address, Path folder) {
    BrowserType.LaunchPersistentContextOptions options =
        new BrowserType.LaunchPersistentContextOptions()
            .setExecutablePath(EXECUTABLE)
            .setArgs(ARGUMENTS)
            .setBaseURL(address)
            .setViewportSize(Screen.PHONE.width, Screen.PHONE.height)
            .setHasTouch(Screen.PHONE.touch);
    return new Visit(playwright.chromium().launchPersistentContext(folder, options));
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
