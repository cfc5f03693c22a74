package club.emberwell.frozen;

import java.util.Set;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.nodes.TextNode;

/** A page as text: what can be read, where links lead, what stands in each field of a form. */
final class PageText {
  private static final Set<String> LINES =
      Set.of(
          "p",
          "li",
          "dt",
          "dd",
          "tr",
          "h1",
          "h2",
          "h3",
          "h4",
          "div",
          "section",
          "article",
          "fieldset",
          "legend",
          "label",
          "summary",
          "details",
          "ul",
          "ol",
          "dl",
          "table",
          "caption",
          "form",
          "nav",
          "header",
          "footer",
          "main",
          "aside",
          "figure",
          "figcaption",
          "pre",
          "blockquote",
          "thead",
          "tbody",
          "br");

  private final StringBuilder text = new StringBuilder();

  private PageText() {}

  /** What stands between header and footer, or all of it. */
  static String of(Document page, boolean whole) {
    PageText made = new PageText();
    made.text.append(page.title()).append('\n');
    if (whole) {
      made.walk(page.body());
    } else {
      page.select(".notice-strip").forEach(made::walk);
      page.select("main").forEach(made::walk);
    }
    return made.text
        .toString()
        .lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty())
        .map(line -> line + "\n")
        .reduce("", String::concat);
  }

  private void walk(Node node) {
    if (node instanceof TextNode words) {
      text.append(words.text());
    } else if (node instanceof Element element) {
      element(element);
    }
  }

  private void element(Element element) {
    String name = element.normalName();
    boolean line = LINES.contains(name);
    text.append(line ? "\n" : "");
    switch (name) {
      case "script", "style" -> text.append("");
      case "svg" -> text.append(element.text().isEmpty() ? "" : "[plot " + element.text() + "]");
      case "img" -> text.append("[picture ").append(element.attr("alt")).append(']');
      case "datalist" -> text.append("\n[list ").append(element.id()).append("]\n");
      case "input" -> input(element);
      case "select" -> select(element);
      case "textarea" -> field(element, element.val().replace('\n', '|'));
      case "button" -> button(element);
      case "a" -> around("", element, " (" + element.attr("href") + ")");
      case "del" -> around("[gone: ", element, "]");
      case "ins" -> around("[new: ", element, "]");
      case "td", "th" -> around(" | ", element, "");
      case "form" -> form(element);
      case "h1", "h2", "h3", "h4" -> around("#".repeat(name.charAt(1) - '0') + " ", element, "");
      case "details" -> around(element.hasAttr("open") ? "[open] " : "[closed] ", element, "");
      default -> around("", element, "");
    }
    text.append(line ? "\n" : "");
  }

  private void around(String before, Element element, String after) {
    text.append(before);
    element.childNodes().forEach(this::walk);
    text.append(after);
  }

  private void form(Element form) {
    String method = form.hasAttr("method") ? form.attr("method") : "get";
    around("form " + method + " " + form.attr("action") + "\n", form, "\nend of form");
  }

  private void input(Element input) {
    String type = input.attr("type");
    if (input.attr("name").equals("form-token")) {
      return;
    }
    if (type.equals("radio") || type.equals("checkbox")) {
      text.append(input.hasAttr("checked") ? "(x) " : "( ) ");
    }
    field(input, input.val());
    text.append(type.equals("hidden") ? " hidden\n" : "");
  }

  private void field(Element field, String value) {
    text.append('[')
        .append(field.attr("name"))
        .append('=')
        .append(value)
        .append(field.hasAttr("required") ? " needed" : "")
        .append(field.attr("aria-invalid").equals("true") ? " at fault" : "")
        .append("] ");
  }

  private void select(Element select) {
    Element chosen = select.selectFirst("option[selected]");
    field(select, chosen == null ? "" : chosen.val());
    for (Element option : select.select("option")) {
      text.append("\n  ").append(option.val()).append(": ").append(option.text());
    }
    text.append('\n');
  }

  private void button(Element button) {
    String value = button.hasAttr("name") ? " " + button.attr("name") + "=" + button.val() : "";
    text.append(" <").append(button.text()).append(value).append("> ");
  }
}
