package club.emberwell.api.report;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Every field of a report with the wrong unit, sign, size, type, encoding and reference: the right
 * status, the field's pointer, and nothing half stored. The table is ours; the statuses are those
 * of design section 4 and RFC 9110, 15.5.
 */
@QuarkusTest
class BadReportTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Where the raw value goes: a mapper would mend what should arrive broken. */
  private static final String PLACE = "\"@@\"";

  private static Person person;

  @Inject DataSource database;

  private static Person person() {
    if (person == null) {
      person = People.join();
    }
    return person;
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvFileSource(
      resources = "/report/bad-fields.csv",
      delimiter = '|',
      quoteCharacter = '`',
      numLinesToSkip = 1,
      maxCharsPerColumn = 20_000)
  void aFieldAtFaultIsNamed(String field, String value, int status, String pointer)
      throws Exception {
    ObjectNode body = JSON.valueToTree(Bodies.report());
    put(body, field);
    List<Long> before = counts();
    Response answer =
        person()
            .asks()
            .header("Idempotency-Key", Bodies.key())
            .body(JSON.writeValueAsString(body).replace(PLACE, value))
            .post("/api/v1/reports");
    assertEquals(status, answer.statusCode(), answer::asString);
    List<String> pointers = answer.jsonPath().getList("errors.pointer");
    assertTrue(pointers.contains(pointer == null ? field : pointer), answer::asString);
    assertEquals(before, counts(), "nothing half stored");
  }

  @Test
  void whatIsNoJsonOrInAnotherEncodingIsRefused() throws SQLException {
    List<Long> before = counts();
    for (String text : new String[] {"", "{", "[]", "null", "{\"a\":1,\"a\":2}", "{} x"}) {
      assertEquals(400, send(text.getBytes(StandardCharsets.UTF_8)), text);
    }
    byte[] latin = "{\"material\": \"chêne\"}".getBytes(StandardCharsets.ISO_8859_1);
    assertEquals(400, send(latin));
    assertEquals(before, counts());
  }

  @Test
  void aBodyThatIsTooLargeIsRefused() throws SQLException {
    List<Long> before = counts();
    assertEquals(
        413,
        send(("{\"notes\": \"" + "x".repeat(300_000) + "\"}").getBytes(StandardCharsets.UTF_8)));
    assertEquals(before, counts());
  }

  @Test
  void everyFaultIsNamedAtOnce() {
    List<String> pointers =
        person()
            .asks()
            .header("Idempotency-Key", Bodies.key())
            .body(Map.of("settings", Map.of("power", "45", "speed", "600 mm/m")))
            .post("/api/v1/reports")
            .then()
            .statusCode(422)
            .extract()
            .jsonPath()
            .getList("errors.pointer");
    assertTrue(
        pointers.containsAll(
            List.of(
                "/machine",
                "/material",
                "/process",
                "/effect",
                "/settings/power",
                "/settings/speed")),
        pointers::toString);
  }

  @Test
  void anAmbiguousTextComesBackWithItsReadings() {
    Map<String, Object> report = Bodies.report();
    report.put(
        "settings", Map.of("power", "45 %", "speed", "1,000 mm/min", "lineSpacing", "0.1 mm"));
    List<String> readings =
        Bodies.keyed(person(), report)
            .post("/api/v1/reports")
            .then()
            .statusCode(422)
            .extract()
            .jsonPath()
            .getList("errors[0].readings");
    assertEquals(2, readings.size(), readings::toString);
  }

  private static int send(byte[] body) {
    return given()
        .header("Authorization", "Bearer " + person().token())
        .header("Idempotency-Key", Bodies.key())
        .contentType(ContentType.JSON)
        .body(body)
        .post("/api/v1/reports")
        .statusCode();
  }

  /** Makes a place at a pointer, with objects on the way. */
  private static void put(ObjectNode body, String pointer) {
    String[] names = pointer.substring(1).split("/");
    ObjectNode at = body;
    for (int i = 0; i < names.length - 1; i++) {
      at = at.withObject("/" + names[i]);
    }
    at.put(names[names.length - 1], "@@");
  }

  private List<Long> counts() throws SQLException {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "select (select count(*) from report), (select count(*) from trial),"
                    + " (select count(*) from entry_revision),"
                    + " (select count(*) from idempotency where member_id = '"
                    + person().id()
                    + "')")) {
      row.next();
      return List.of(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4));
    }
  }
}
