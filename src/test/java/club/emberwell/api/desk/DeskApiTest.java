package club.emberwell.api.desk;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The desk over JSON: who may, what bad input is told, and the ways through it. */
@QuarkusTest
class DeskApiTest extends DeskCalls {
  private String report() {
    Map<String, Object> report =
        body(
            "laser",
            Map.of(
                "source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry"),
            "material",
            "maple",
            "process",
            "surface-engraving",
            "settings",
            Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
            "effect",
            "right",
            "notes",
            "Words of " + UUID.randomUUID());
    return post(author, "reports", report).statusCode(201).extract().path("id");
  }

  @Test
  void aFlagIsRaisedSettledAndItsOutcomeTold() {
    String id = report();
    Map<String, Object> flag = body("kind", "report", "id", id, "reason", "unsafe-advice");
    String made = post(member, "flags", flag).statusCode(200).extract().path("id");
    get(moderator, "desk/flags/report/" + id)
        .statusCode(200)
        .body("items[0].id", equalTo(made))
        .body("items[0].reason", equalTo("unsafe-advice"));
    post(
            moderator,
            "desk/flags/report/" + id,
            body("upheld", true, "action", "hold", "reason", "Held until it is clear."))
        .statusCode(200)
        .body("settled", equalTo(1));
    get(member, "flags")
        .body("items[0].state", equalTo("upheld"))
        .body("items[0].outcome", equalTo("Held until it is clear."));
    get(member, "reports/" + id).statusCode(404);
    get(author, "reports/" + id).statusCode(200);
    post(
            moderator,
            "desk/items/report/" + id + "/decisions",
            body("action", "restore", "reason", "It is clear now."))
        .statusCode(200)
        .body("item.state", equalTo("live"))
        .body("decisions[0].reason", equalTo("It is clear now."));
  }

  @Test
  void badFlagsAreToldWhatIsWrong() {
    String id = report();
    post(member, "flags", body("kind", "report", "id", id, "reason", "dull"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    post(member, "flags", body("kind", "report", "id", id)).statusCode(422);
    post(member, "flags", body("kind", "report", "reason", "spam"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/id"));
    post(member, "flags", body("id", id, "reason", "spam"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/kind"));
    post(member, "flags", body("kind", "machine", "id", id, "reason", "spam")).statusCode(404);
    post(member, "flags", body("kind", "report", "id", UUID.randomUUID(), "reason", "spam"))
        .statusCode(404);
    post(member, "flags", body("kind", "report", "id", "no id", "reason", "spam")).statusCode(400);
    post(
            member,
            "flags",
            body("kind", "report", "id", id, "reason", "spam", "note", "x".repeat(501)))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/note"));
    post(member, "flags", body("kind", "report", "id", id, "reason", "spam", "state", "upheld"))
        .statusCode(400);
    post(author, "flags", body("kind", "report", "id", id, "reason", "spam")).statusCode(403);
    member
        .asks()
        .body(body("kind", "report", "id", id, "reason", "spam"))
        .post("/api/v1/flags")
        .then()
        .statusCode(400);
    String made =
        post(member, "flags", body("kind", "report", "id", id, "reason", "spam"))
            .statusCode(200)
            .extract()
            .path("id");
    author.asks().delete("/api/v1/flags/" + made).then().statusCode(404);
    member.asks().delete("/api/v1/flags/" + made).then().statusCode(204);
    member.asks().delete("/api/v1/flags/" + made).then().statusCode(404);
  }

  @Test
  void badDecisionsAreToldWhatIsWrong() {
    String path = "desk/items/report/" + report() + "/decisions";
    post(moderator, path, body("action", "burn", "reason", "x"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/action"));
    post(moderator, path, body("action", "hold"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    post(moderator, path, body("action", "hold", "reason", "x".repeat(1001)))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    post(moderator, path, body("action", "hold", "reason", "a\u0000b")).statusCode(422);
    post(member, path, body("action", "hold", "reason", "x")).statusCode(403);
    post(
            moderator,
            "desk/items/report/" + UUID.randomUUID() + "/decisions",
            body("action", "hold", "reason", "x"))
        .statusCode(404);
  }

  @Test
  void aBanEndsSessionsAndTokens() {
    post(moderator, "desk/members/" + member.id() + "/ban", body())
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    post(moderator, "desk/members/" + second.id() + "/ban", body("reason", "x")).statusCode(403);
    post(moderator, "desk/members/" + moderator.id() + "/ban", body("reason", "x")).statusCode(403);
    post(moderator, "desk/members/" + UUID.randomUUID() + "/ban", body("reason", "x"))
        .statusCode(404);
    post(moderator, "desk/members/" + member.id() + "/ban", body("reason", "Spam."))
        .statusCode(204);
    get(member, "flags").statusCode(401);
    get(moderator, "desk/members/" + member.id())
        .body("state", equalTo("banned"))
        .body("email", equalTo(null));
    post(moderator, "desk/members/" + member.id() + "/unban", body("reason", "A mistake."))
        .statusCode(204);
    get(member, "flags").statusCode(401);
    moderator.asks().put("/api/v1/desk/members/" + member.id() + "/trust").then().statusCode(204);
    get(moderator, "desk/members?q=" + member.handle())
        .body("items[0].trusted", equalTo(true))
        .body("items[0].id", equalTo(member.id()));
    moderator
        .asks()
        .delete("/api/v1/desk/members/" + member.id() + "/trust")
        .then()
        .statusCode(204);
  }

  @Test
  void anUndoIsShownDoneAndTakenBack() {
    Instant since = Instant.now().minusSeconds(5);
    String id = report();
    UUID run = UUID.randomUUID();
    Map<String, Object> wanted =
        body("id", run, "member", author.id(), "since", since.toString(), "reason", "A spree.");
    moderator
        .asks()
        .body(body("member", author.id(), "since", since.toString()))
        .post("/api/v1/desk/undos/preview")
        .then()
        .statusCode(200)
        .body("total", equalTo(1))
        .body("first[0].item.id", equalTo(id));
    post(moderator, "desk/undos", wanted).statusCode(200).body("state", equalTo("done"));
    get(member, "reports/" + id).statusCode(410);
    get(moderator, "desk/undos/" + run).body("done", equalTo(1));
    post(moderator, "desk/undos/" + run + "/restore", body()).body("state", equalTo("restored"));
    get(member, "reports/" + id).statusCode(200);
    Map<String, String> faults =
        Map.of("since", "next week", "member", UUID.randomUUID().toString(), "reason", " ");
    faults.forEach(
        (field, value) -> {
          Map<String, Object> bad = new HashMap<>(wanted);
          bad.put("id", UUID.randomUUID());
          bad.put(field, value);
          post(moderator, "desk/undos", bad)
              .statusCode(422)
              .body("errors[0].pointer", equalTo("/" + field));
        });
    Map<String, Object> both = new HashMap<>(wanted);
    both.put("rule", "burst");
    post(moderator, "desk/undos", both).statusCode(422);
    post(second, "desk/undos/" + UUID.randomUUID() + "/restore", body()).statusCode(404);
  }

  @Test
  void aRuleIsSetOverWhatWasRead() {
    String etag = moderator.asks().get("/api/v1/desk/rules/burst").header("ETag");
    Map<String, Object> rule = body("mode", "note", "threshold", 30, "minutes", 10);
    moderator.asks().body(rule).put("/api/v1/desk/rules/burst").then().statusCode(428);
    List.of(
            Map.<String, Object>of("mode", "loud"),
            Map.<String, Object>of("threshold", -1),
            Map.<String, Object>of("minutes", 0))
        .forEach(
            bad -> {
              Map<String, Object> changed = new HashMap<>(rule);
              changed.putAll(bad);
              moderator
                  .asks()
                  .header("If-Match", etag)
                  .body(changed)
                  .put("/api/v1/desk/rules/burst")
                  .then()
                  .statusCode(422)
                  .body("errors[0].pointer", equalTo("/" + bad.keySet().iterator().next()));
            });
    moderator
        .asks()
        .header("If-Match", etag)
        .body(rule)
        .put("/api/v1/desk/rules/burst")
        .then()
        .statusCode(200)
        .body("threshold", equalTo(30f));
    moderator
        .asks()
        .header("If-Match", etag)
        .body(rule)
        .put("/api/v1/desk/rules/burst")
        .then()
        .statusCode(412);
    get(moderator, "desk/rules/nothing").statusCode(404);
  }

  @Test
  void theLogIsFilteredAndExportedWithoutFormulas() {
    String reason = "=HYPERLINK(\"x\"), \"quoted\"";
    post(moderator, "desk/members/" + member.id() + "/ban", body("reason", reason)).statusCode(204);
    String filter = "by=" + moderator.handle() + "&action=ban";
    get(moderator, "desk/audit?" + filter)
        .statusCode(200)
        .body("items.size()", equalTo(1))
        .body("items[0].subject.id", equalTo(member.id()))
        .body("items[0].reason", equalTo(reason));
    String csv =
        moderator
            .asks()
            .accept("text/csv")
            .get("/api/v1/desk/audit/export?format=csv&" + filter)
            .then()
            .statusCode(200)
            .contentType(startsWith("text/csv"))
            .extract()
            .asString();
    assertEquals(2, csv.split("\r\n").length);
    assertEquals(true, csv.contains("\"'=HYPERLINK(\"\"x\"\"), \"\"quoted\"\"\""), csv);
    String lines =
        moderator
            .asks()
            .accept("*/*")
            .get("/api/v1/desk/audit/export?format=jsonl&" + filter)
            .then()
            .statusCode(200)
            .extract()
            .asString();
    assertEquals(true, lines.contains("\"action\":\"ban\""), lines);
    get(moderator, "desk/audit?from=yesterday")
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/from"));
    get(moderator, "desk/audit?from=2026-02-01&to=2026-01-01").statusCode(422);
    get(moderator, "desk/audit?by=" + "x".repeat(200)).statusCode(422);
    get(member, "desk/audit").statusCode(401);
    get(author, "desk/audit").statusCode(403);
    get(moderator, "desk").statusCode(200).body("counts.waiting", not(equalTo(null)));
    get(moderator, "desk/waiting").statusCode(200);
    get(moderator, "desk/notes").statusCode(200);
    get(moderator, "desk/audit?size=1").body("items.size()", equalTo(1));
    get(moderator, "desk/audit?cursor=x").statusCode(400);
  }
}
