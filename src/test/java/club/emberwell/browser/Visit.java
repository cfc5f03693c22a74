package club.emberwell.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** One person at one browser. Whatever the browser complains of is kept and held against us. */
final class Visit implements AutoCloseable {
  private static final int PATIENCE_MS = 15_000;
  private static final int FIRST_FAILURE = 400;

  /** What a page says that is left, and one that gets no service worker in a test. */
  private static final List<String> LEFT =
      List.of("htmx:sendAbort", "htmx:afterRequest", "Service Worker registration blocked by");

  private final BrowserContext context;
  private final boolean alone;
  private final Page page;
  private final List<String> complaints = new ArrayList<>();
  private int status;

  Visit(BrowserContext context) {
    this(context, true);
  }

  /**
   * @param alone false where the same page is used again
   */
  Visit(BrowserContext context, boolean alone) {
    this.context = context;
    this.alone = alone;
    context.setDefaultTimeout(PATIENCE_MS);
    page = context.newPage();
    page.onConsoleMessage(this::heard);
    page.onPageError(error -> complaints.add("script: " + error));
    page.onResponse(this::answered);
  }

  /** As it was at the beginning, but for what the browser kept. */
  Visit anew(Screen screen) {
    page.setViewportSize(screen.width, screen.height);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    complaints.clear();
    return this;
  }

  private void heard(ConsoleMessage message) {
    boolean bad = message.type().equals("error") || message.type().equals("warning");
    // a page that is left aborts what it was still asking for
    boolean left = LEFT.stream().anyMatch(message.text()::startsWith);
    // a refused form is an answer with a status of its own; what is loaded for a page is in
    // answered
    if (bad && !left && !message.text().startsWith("Failed to load resource")) {
      complaints.add("console: " + message.text());
    }
  }

  private void answered(Response response) {
    if (response.request().resourceType().equals("document")) {
      status = response.status();
    } else if (response.status() >= FIRST_FAILURE) {
      complaints.add(response.status() + " " + response.url());
    }
  }

  /** Script errors, refusals of the content security policy, parts that were not there. */
  List<String> complaints() {
    return List.copyOf(complaints);
  }

  void noComplaints() {
    assertEquals(List.of(), complaints());
  }

  /** How the page was answered. */
  int status() {
    return status;
  }

  Page page() {
    return page;
  }

  /** What the browser remembers, to go on from in another visit. */
  String kept() {
    return context.storageState();
  }

  Visit open(String path) {
    page.navigate(path);
    return this;
  }

  /** Path and query of where the browser is. */
  String where() {
    return page.url().replaceFirst("^https?://[^/]+", "");
  }

  Locator one(String selector) {
    return page.locator(selector);
  }

  Visit press(String selector) {
    page.locator(selector).first().click();
    return this;
  }

  /** Types into fields by their names. */
  Visit fill(Map<String, String> fields) {
    fields.forEach((name, text) -> page.fill("main [name='" + name + "']", text));
    return this;
  }

  Visit choose(String name, String value) {
    page.check("main input[name='" + name + "'][value='" + value + "']");
    return this;
  }

  String value(String name) {
    return page.inputValue("main [name='" + name + "']");
  }

  /** Sends the form of the page. */
  Visit send() {
    return press("main form[method=post] button.primary");
  }

  /** Waits for the page that a form leads to. */
  Visit arrive(String path) {
    page.waitForURL(url -> url.replaceFirst("^https?://[^/]+", "").startsWith(path));
    return this;
  }

  Visit signIn(String handle, String password) {
    open("/sign-in").fill(Map.of("handle", handle, "password", password)).send();
    page.waitForURL(url -> !url.contains("/sign-in"));
    return this;
  }

  /** Unfolds everything that can be unfolded. */
  Visit unfold() {
    page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true; })");
    return this;
  }

  @Override
  public void close() {
    if (alone) {
      context.close();
    }
  }
}
