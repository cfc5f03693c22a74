package club.emberwell.exchange.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;

/**
 * The copy that people read, in a browser or on paper: one page without scripts. It shows whatever
 * a line says, so that no kind and no field is forgotten.
 */
final class ReadableCopy implements AutoCloseable {
  private static final String HEAD =
      """
      <!doctype html>
      <html lang="en">
      <head>
      <meta charset="utf-8">
      <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src 'self' file: data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <title>Bench of %1$s</title>
      <style>
      :root { color-scheme: light dark }
      body { font: 1rem/1.45 system-ui, sans-serif; max-width: 50rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere }
      article { border-top: 1px solid; padding: .5rem 0; break-inside: avoid-page }
      h1, h2, h3 { line-height: 1.2; break-after: avoid }
      dl { margin: .25rem 0; display: grid; grid-template-columns: minmax(7rem, auto) 1fr; gap: 0 .75rem }
      dt { font-weight: 600 }
      dd { margin: 0; white-space: pre-wrap }
      ol { margin: .25rem 0; padding-left: 2rem }
      img { max-width: 100%%; max-height: 20rem }
      .soft { opacity: .8 }
      @media print { body { max-width: none; font-size: 10pt } nav { display: none } }
      </style>
      </head>
      <body>
      <h1>Bench of %1$s</h1>
      <p>Saved %2$s (UTC). The lists beside this page hold the same for programs.</p>
      """;

  /** What is said elsewhere or means nothing to people. */
  private static final Map<String, String> INSTEAD =
      Map.of(
          "createdAt", "Made", "updatedAt", "Changed", "usedAt", "Last used", "cameFrom", "From");

  private final Writer page;

  ReadableCopy(OutputStream out, String member, String at) throws IOException {
    page = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    page.write(HEAD.formatted(escaped(member), escaped(at)));
  }

  void heading(BenchKind kind, int many) throws IOException {
    page.write("<h2>%s (%d)</h2>\n".formatted(escaped(kind.label()), many));
  }

  void thing(BenchLine line) throws IOException {
    page.write("<article>\n<h3>%s</h3>\n".formatted(escaped(line.name())));
    if (!line.live()) {
      page.write("<p>Withdrawn.</p>\n");
    }
    if (line.caution() != null) {
      page.write("<p><strong>%s</strong></p>\n".formatted(escaped(line.caution())));
    }
    if (line.picture() != null) {
      page.write(
          "<p><img src=\"%s\" alt=\"Photo of %s\" loading=\"lazy\"></p>\n"
              .formatted(escaped(line.picture()), escaped(line.name())));
    }
    JsonNode json = line.json();
    value(json.path("written"));
    page.write("<dl class=\"soft\">");
    for (String field : new String[] {"tag", "createdAt", "updatedAt", "usedAt", "id"}) {
      if (json.hasNonNull(field)) {
        field(field, json.get(field));
      }
    }
    page.write("</dl>\n");
    if (json.hasNonNull("results")) {
      page.write("<h4>Results</h4>\n");
      value(json.at("/results/trials"));
    }
    revisions(json.path("revisions"));
    page.write("</article>\n");
  }

  private void revisions(JsonNode all) throws IOException {
    if (all.size() < 2) {
      return;
    }
    page.write("<details open><summary>Revisions</summary>\n<ol>\n");
    for (JsonNode one : all) {
      page.write(
          "<li>%s, %s%s"
              .formatted(
                  escaped(one.path("at").asText()),
                  escaped(one.path("action").asText()),
                  one.hasNonNull("reason") ? ": " + escaped(one.path("reason").asText()) : ""));
      if (one.hasNonNull("written")) {
        value(one.get("written"));
      }
      page.write("</li>\n");
    }
    page.write("</ol></details>\n");
  }

  private void value(JsonNode value) throws IOException {
    if (value.isObject() && quantity(value) != null) {
      page.write(escaped(quantity(value)));
    } else if (value.isObject()) {
      page.write("<dl>");
      for (Map.Entry<String, JsonNode> one : value.properties()) {
        field(one.getKey(), one.getValue());
      }
      page.write("</dl>\n");
    } else if (value.isArray()) {
      page.write("<ol>");
      for (JsonNode one : value) {
        page.write("<li>");
        value(one);
        page.write("</li>");
      }
      page.write("</ol>\n");
    } else {
      page.write(escaped(value.isBoolean() ? value.asBoolean() ? "yes" : "no" : value.asText()));
    }
  }

  private void field(String name, JsonNode value) throws IOException {
    if (value.isContainerNode() && value.isEmpty()) {
      return;
    }
    page.write("<dt>%s</dt><dd>".formatted(escaped(INSTEAD.getOrDefault(name, words(name)))));
    value(value);
    page.write("</dd>\n");
  }

  /** As it was typed; null where it is none. */
  private static String quantity(JsonNode value) {
    if (value.hasNonNull("text") && value.size() == 1) {
      return value.get("text").asText();
    }
    boolean structured = value.hasNonNull("value") && value.hasNonNull("unit") && value.size() == 2;
    return structured ? value.get("value").asText() + " " + value.get("unit").asText() : null;
  }

  /** "ratedPower" as "Rated power". */
  private static String words(String name) {
    String apart = name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT).strip();
    return apart.isEmpty()
        ? name
        : apart.substring(0, 1).toUpperCase(Locale.ROOT) + apart.substring(1);
  }

  private static String escaped(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(c);
              }
            });
    return safe.toString();
  }

  @Override
  public void close() throws IOException {
    page.write("</body>\n</html>\n");
    page.flush();
  }
}
