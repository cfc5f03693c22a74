package club.emberwell.exchange;

import static io.restassured.RestAssured.given;

import club.emberwell.access.People.Person;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What a stranger does with the data, and what goes into them. */
final class OpenFiles {
  private OpenFiles() {}

  static String post(Person person, Map<String, Object> more) {
    Map<String, Object> report = Life.body();
    report.put(
        "laser",
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry"));
    report.putAll(more);
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  static Response data(String file) {
    return given().get("/data/" + file);
  }

  static String text(String file) {
    return new String(data(file).asByteArray(), StandardCharsets.UTF_8);
  }

  static void prefer(Person person, Map<String, Object> wish) {
    person
        .asks()
        .header("If-Match", person.asks().get("/api/v1/me").header("ETag"))
        .body(wish)
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(200);
  }

  /** The cells of a table, quotes taken away. */
  static List<List<String>> csv(String table) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < table.length(); i++) {
      char c = table.charAt(i);
      if (c == '"') {
        if (quoted && i + 1 < table.length() && table.charAt(i + 1) == '"') {
          cell.append(c);
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (!quoted && (c == ',' || c == '\n')) {
        row.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          rows.add(row);
          row = new ArrayList<>();
        }
      } else if (quoted || c != '\r') {
        cell.append(c);
      }
    }
    return rows;
  }

  /** A row of the table by the names of its columns. */
  static Map<String, String> row(String table, String report) {
    List<List<String>> rows = csv(table);
    List<String> head = rows.get(0);
    return rows.stream()
        .filter(cells -> cells.get(0).equals(report))
        .findFirst()
        .map(
            cells -> {
              Map<String, String> row = new HashMap<>();
              for (int i = 0; i < head.size(); i++) {
                row.put(head.get(i), cells.get(i));
              }
              return row;
            })
        .orElse(Map.of());
  }
}
