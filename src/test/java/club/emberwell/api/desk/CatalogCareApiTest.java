package club.emberwell.api.desk;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import club.emberwell.access.People.Person;
import club.emberwell.desk.SweptCatalog;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Safety texts and words over JSON: proposed, looked at by somebody else, filed and merged. */
@QuarkusTest
class CatalogCareApiTest extends DeskCalls {
  @Inject SweptCatalog swept;

  @AfterEach
  void sweep() {
    swept.sweep("quillwood");
    swept.sweep("test-");
  }

  private static Map<String, Object> caution(String id, String claim) {
    return body(
        "id",
        id,
        "class",
        "care",
        "scope",
        body("materials", List.of("maple"), "exactly", false),
        "agent",
        "fine dust",
        "hazard",
        "irritates the airways",
        "claim",
        claim,
        "advice",
        "Extract at the source.",
        "evidence",
        body(
            "source",
            "common practice, no source",
            "jurisdiction",
            "general",
            "confidence",
            "judgement",
            "disputed",
            false));
  }

  @Test
  void aSafetyTextWaitsForSomebodyElseAndARemovalNeedsTwo() {
    String id = "test-" + UUID.randomUUID().toString().substring(0, 8);
    Map<String, Object> sent =
        body("caution", caution(id, "Dust of hardwood irritates."), "reason", "It is missing.");
    String proposal =
        post(moderator, "caution-proposals", sent).statusCode(200).extract().path("id");
    get(member, "caution-proposals/" + proposal).statusCode(404);
    get(moderator, "desk/cautions/" + id).statusCode(404);
    post(moderator, "desk/caution-proposals/" + proposal, body("accept", true)).statusCode(403);
    post(second, "desk/caution-proposals/" + proposal, body("accept", false))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    post(second, "desk/caution-proposals/" + proposal, body()).statusCode(422);
    post(second, "desk/caution-proposals/" + proposal, body("accept", true))
        .statusCode(200)
        .body("state", equalTo("accepted"));
    get(moderator, "desk/cautions/" + id)
        .statusCode(200)
        .body("caution.agent", equalTo("fine dust"));

    Map<String, Object> change =
        body("caution", caution(id, "Dust of hardwood harms."), "base", 1, "reason", "Stronger.");
    String edit = post(member, "caution-proposals", change).statusCode(200).extract().path("id");
    post(second, "desk/caution-proposals/" + edit, body("accept", true)).statusCode(200);
    get(second, "desk/cautions/" + id + "/history")
        .body("items[0].changes.pointer", hasItem("/claim"))
        .body("items[0].by.handle", equalTo(member.handle()));
    post(member, "caution-proposals", change).statusCode(412);

    post(moderator, "desk/cautions/" + id + "/removal", body("reason", "Said twice."))
        .statusCode(204);
    post(moderator, "desk/cautions/" + id + "/removal/confirm", body()).statusCode(403);
    post(second, "desk/cautions/" + id + "/removal/confirm", body()).statusCode(204);
    get(moderator, "desk/cautions/" + id).body("removed", equalTo(true));
    post(second, "desk/cautions/" + id + "/restore", body("reason", "It was right."))
        .statusCode(204);
  }

  @Test
  void aBadCautionTextIsToldWhatIsWrong() {
    Map<String, Object> unknown = caution("test-bad", "x");
    unknown.put("scope", body("materials", List.of("no-such-stuff"), "exactly", false));
    Map<String, Object> blank = caution("test-bad", " ");
    Map<String, Object> sourceless = caution("test-bad", "x");
    sourceless.put("evidence", body("source", "", "disputed", false));
    for (Map<String, Object> bad : List.of(unknown, blank, sourceless, caution("Bad Id", "x"))) {
      post(member, "caution-proposals", body("caution", bad, "reason", "x")).statusCode(422);
    }
    post(member, "caution-proposals", body("reason", "x"))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/caution"));
    post(member, "caution-proposals", body("caution", caution("test-bad", "x")))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
  }

  @Test
  void aMergeIsShownAsItWouldCount() {
    String loser = term();
    String winner = term();
    reportOn(author, loser);
    reportOn(member, winner);
    get(moderator, "desk/terms/material/" + loser + "/merge?into=" + winner)
        .statusCode(200)
        .body("shifts.size()", equalTo(1))
        .body("shifts[0].loser.reports", equalTo(1))
        .body("shifts[0].winner.reports", equalTo(1))
        .body("shifts[0].together.reports", equalTo(2))
        .body("shifts[0].together.voices", equalTo(2));
  }

  private String term() {
    String word = "quillwood" + UUID.randomUUID().toString().substring(0, 6);
    Map<String, Object> term = body("value", word, "label", word, "reason", "Missing.");
    post(moderator, "desk/terms/material", term).statusCode(200);
    return word;
  }

  private static void reportOn(Person person, String material) {
    Map<String, Object> laser =
        body(
            "source", "diode",
            "wavelength", "455 nm",
            "ratedPower", "10 W",
            "motion", "gantry");
    Map<String, Object> settings =
        body("power", "50 %", "speed", "100 mm/s", "lineSpacing", "0.1 mm");
    Map<String, Object> report =
        body(
            "laser", laser,
            "material", material,
            "process", "surface-engraving",
            "settings", settings,
            "effect", "right");
    post(person, "reports", report).statusCode(201);
  }

  @Test
  void wordsAreFiledSpelledMergedAndUnmerged() {
    String word = "quillwood" + UUID.randomUUID().toString().substring(0, 6);
    Map<String, Object> term =
        body("value", word, "label", "Label " + word, "parent", null, "reason", "Missing.");
    post(moderator, "desk/terms/material", term).statusCode(200);
    post(moderator, "desk/terms/material", term).statusCode(422);
    post(moderator, "desk/terms/plants", term).statusCode(404);
    String path = "desk/terms/material/" + word;
    post(moderator, path + "/spellings", body("text", "spelled " + word)).statusCode(200);
    post(moderator, path + "/spellings", body()).statusCode(422);
    post(moderator, path + "/spellings/removal", body("text", "spelled " + word, "reason", "No."))
        .statusCode(200);
    post(moderator, path + "/spellings/removal", body("text", "never", "reason", "No."))
        .statusCode(404);
    get(moderator, path + "/merge?into=maple")
        .statusCode(200)
        .body("winner.value", equalTo("maple"))
        .body("reports.loser", equalTo(0));
    get(moderator, path + "/merge").statusCode(422);
    post(moderator, path + "/merge", body("into", "maple")).statusCode(422);
    post(moderator, path + "/merge", body("into", "no-such", "reason", "x")).statusCode(422);
    post(moderator, path + "/merge", body("into", "maple", "reason", "The same.")).statusCode(200);
    get(moderator, path).body("replacedBy", equalTo("maple"));
    post(moderator, path + "/merge/undo", body("reason", "Not the same.")).statusCode(200);
    get(moderator, path).body("replacedBy", nullValue());
    String etag = moderator.asks().get("/api/v1/" + path).header("ETag");
    moderator
        .asks()
        .header("If-Match", etag)
        .body(body("label", "Other " + word, "respondsAlike", true, "reason", "Better."))
        .put("/api/v1/" + path)
        .then()
        .statusCode(200)
        .body("label", equalTo("Other " + word))
        .body("respondsAlike", equalTo(true));
    get(moderator, path + "/history").body("items[0].by.handle", equalTo(moderator.handle()));
    post(moderator, "desk/words/" + UUID.randomUUID() + "/file", body("term", "maple"))
        .statusCode(404);
    post(moderator, "desk/words/" + UUID.randomUUID() + "/dismiss", body()).statusCode(422);
  }
}
