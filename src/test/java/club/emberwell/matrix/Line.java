package club.emberwell.matrix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.matrix.Routes.Route;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One line of {@code route-matrix.csv}; {@link RouteMatrixTest} says how it is read. */
record Line(Route route, String things, Map<String, String> expected) {
  static final List<String> ROLES = List.of("stranger", "member", "author", "moderator", "owner");

  static List<Line> all() {
    try (InputStream in = Line.class.getResourceAsStream("/route-matrix.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(Line::of)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Line of(String text) {
    String[] cells = text.split(";", -1);
    assertEquals(3 + ROLES.size(), cells.length, "a line with missing cells: " + text);
    Map<String, String> expected = new LinkedHashMap<>();
    for (int i = 0; i < ROLES.size(); i++) {
      expected.put(ROLES.get(i), cells[3 + i].strip());
    }
    return new Line(new Route(cells[1].strip(), cells[0].strip()), cells[2].strip(), expected);
  }

  String told(Map<String, String> seen) {
    return route + ";" + things + ";" + String.join(";", seen.values());
  }

  /** The address with things for its parameters. */
  String address(Things made) {
    String path = route.path();
    String query = "";
    for (String pair : pairs()) {
      String name = pair.substring(0, pair.indexOf('='));
      String meant = pair.substring(pair.indexOf('=') + 1);
      String value = meant.startsWith("@") ? made.get(meant.substring(1)) : meant;
      if (name.startsWith("?")) {
        query += (query.isEmpty() ? "?" : "&") + name.substring(1) + "=" + value;
      } else {
        path = path.replace("{" + name + "}", value);
      }
    }
    String filled = path;
    assertTrue(!filled.contains("{"), () -> "say what the parameters stand for: " + route);
    return filled + query;
  }

  /** What is sent: a form with a picture, or the picture itself; else empty. */
  String sent() {
    for (String pair : pairs()) {
      if (pair.startsWith("send=")) {
        return pair.substring("send=".length());
      }
    }
    return "";
  }

  private String[] pairs() {
    return things.isEmpty() ? new String[0] : things.split(",");
  }
}
