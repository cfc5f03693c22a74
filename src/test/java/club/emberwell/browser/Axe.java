package club.emberwell.browser;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/**
 * The automatic rules for WCAG 2.2 AA (axe-core 4.11), put into a page once however often they are
 * asked there. Only what is broken comes back: all that passed is a list far longer than the page.
 */
final class Axe {
  private static final List<String> TAGS =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

  private static final String CONTRAST = "color-contrast";
  private static final String SCRIPT = script();

  private static final String RUN =
      """
      options => axe.run(document, options).then(({violations}) => violations.flatMap(
        rule => rule.nodes.map(node => `${rule.id}: ${node.html} ${node.failureSummary}`)))
      """;

  private final Page page;

  Axe(Page page) {
    this.page = page;
    page.evaluate(SCRIPT);
  }

  /** What breaks any rule. */
  List<String> everything() {
    return run("tag", TAGS, Map.of());
  }

  /** The same without colours. */
  List<String> allButContrast() {
    return run("tag", TAGS, Map.of(CONTRAST, Map.of("enabled", false)));
  }

  List<String> contrast() {
    return run("rule", List.of(CONTRAST), Map.of());
  }

  private List<String> run(String type, List<String> values, Map<String, Object> rules) {
    Map<String, Object> options =
        Map.of(
            "runOnly",
            Map.of("type", type, "values", values),
            "rules",
            rules,
            "resultTypes",
            List.of("violations"));
    List<?> broken = (List<?>) page.evaluate(RUN, options);
    return broken.stream().map(String::valueOf).toList();
  }

  private static String script() {
    try (InputStream file = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
