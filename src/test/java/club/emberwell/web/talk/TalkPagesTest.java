package club.emberwell.web.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.entry.EntryKind;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TalkPagesTest {
  private static final String FORM = "form.talk-form";

  @Inject TalkViews views;
  @Inject TalkService talk;
  @Inject TalkFinder finder;
  @Inject Members members;

  private static String post(Person person, String path, Map<String, ?> body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static Map<String, Object> report() {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    return Map.of(
        "laser", laser,
        "material", "leather",
        "process", "surface-engraving",
        "settings", Map.of("power", "40 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
        "effect", "right");
  }

  @Test
  void aNoticeIsPostedListedReadAndRefusedWithEverythingKept() {
    Browser ada = Browser.of(People.join());
    Map<String, String> fields = new HashMap<>();
    fields.put("title", "Batch");
    fields.put("text", "Burns *darker* than the last.");
    fields.put("ties.material", "leather");
    ada.get("/notices/new").tidy().send(FORM, fields);
    assertEquals(422, ada.status());
    assertEquals("Burns *darker* than the last.", ada.tidy().field("text"));
    assertEquals("leather", ada.field("ties.material"));
    assertFalse(ada.page().select("#at-title .field-error").isEmpty());
    String word = "w" + Long.toString(System.nanoTime(), 36);
    ada.send(FORM, Map.of("title", "Batch " + word));
    String path = ada.location().replace("?saved=yes", "");
    ada.follow().tidy();
    assertEquals("darker", ada.page().select(".member-text em").text());
    assertEquals("/?material=leather", ada.page().select("main a.chip").attr("href"));
    String link = ".hits a[href=" + path + "]";
    assertNotNull(ada.get("/notices").tidy().page().selectFirst(link));
    assertNotNull(ada.get("/notices?q=" + word).tidy().page().selectFirst(link));
    assertNotNull(ada.get("/?q=" + word).tidy().page().selectFirst(".talk-beside " + link));
  }

  @Test
  void whatIsTiedToAReportStandsOnItsPage() {
    Person person = People.join();
    String report = post(person, "/api/v1/reports", report());
    Browser ada = Browser.of(person);
    ada.get("/reports/" + report).tidy();
    ada.get(ada.page().select("main a[href^=/ask/new]").attr("href")).tidy();
    ada.send(FORM, Map.of("title", "How dark was it", "text", "Tell me."), Map.of("step", "look"));
    ada.send(FORM, Map.of(), Map.of("step", "post"));
    String path = ada.location().replace("?saved=yes", "");
    ada.get("/reports/" + report).tidy();
    assertNotNull(ada.page().selectFirst("main a[href=" + path + "]"));
    ada.get(path);
    assertNotNull(ada.page().selectFirst("main a[href=/reports/" + report + "]"));
  }

  @Test
  void listsAndThreadsTakeTheSameStatementsWhateverTheirLength() {
    Person person = People.join();
    Actor actor = members.byId(UUID.fromString(person.id())).orElseThrow().actor();
    Map<String, Object> question =
        Map.of("title", "A plain question", "text", "x", "ties", Map.of("material", "seaweed"));
    String id = post(person, "/api/v1/questions", question);
    String answers = "/api/v1/questions/" + id + "/answers";
    post(person, answers, Map.of("text", "one"));
    int list = list().size();
    int thread = thread(id, actor).size();
    for (int i = 0; i < 8; i++) {
      post(person, "/api/v1/questions", question);
      post(person, answers, Map.of("text", "more " + i));
    }
    assertEquals(1, list);
    assertEquals(list, list().size());
    // nobody posted work on it: nothing is read of what members used
    assertEquals(5, thread);
    assertEquals(thread, thread(id, actor).size());
  }

  private List<String> list() {
    return StatementCount.of(
        () ->
            views.list(
                finder.find(EntryKind.QUESTION, "", false, Part.FIRST), "", Shown.QUESTIONS));
  }

  private List<String> thread(String id, Actor actor) {
    return StatementCount.of(
        () -> views.thread(talk.thread(actor, UUID.fromString(id), Part.FIRST), actor));
  }

  @Test
  void oneTemplateAloneTakesMarkupAsItIs() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/templates"))) {
      List<String> raw =
          files
              .filter(Files::isRegularFile)
              .filter(TalkPagesTest::isRaw)
              .map(file -> file.getFileName().toString())
              .toList();
      assertEquals(List.of("memberText.html"), raw);
    }
  }

  private static boolean isRaw(Path file) {
    try {
      String text = Files.readString(file);
      return text.contains(".raw") || text.contains(".safe");
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
