package club.emberwell.frozen;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.desk.rule.RuleRunner;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.hook.KnownHosts;
import club.emberwell.keep.BackupWork;
import club.emberwell.keep.MadeNow;
import club.emberwell.talk.Matching;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What a stranger sees stays as it is, or somebody decided otherwise. The club has a database of
 * its own and no work in the background, so that the same is seen in every run.
 */
@QuarkusTest
@TestProfile(FrozenTest.OwnClub.class)
class FrozenTest {
  /** A fresh club, in which nothing of other tests happens. */
  public static final class OwnClub implements QuarkusTestProfile {}

  private static final Golden SEEN = new Golden("src/test/resources/frozen");
  private static final Golden EXAMPLES = new Golden("src/main/resources/api-examples");
  private static final Map<String, String> ROLES = new LinkedHashMap<>();

  static {
    List.of("ada", "ben", "cleo", "dana").forEach(handle -> ROLES.put(handle, "member"));
    ROLES.put("mona", "moderator");
    ROLES.put("milo", "moderator");
    ROLES.put("olga", "owner");
  }

  @Inject EntityManager db;
  @Inject Matching watches;
  @Inject RuleRunner rules;
  @Inject KnownHosts hosts;
  @Inject PackageMaker data;
  @Inject BackupWork backups;

  @TestFactory
  Stream<DynamicTest> whatAStrangerSeesStaysAsItIs() throws UnknownHostException {
    LittleClub club = new LittleClub();
    ROLES.forEach((handle, role) -> club.joins(handle, () -> give(handle, role)));
    watches.catchUp();
    club.calls("club.yaml", "");
    watches.catchUp();
    Map<String, String> seen = new LinkedHashMap<>();
    seen.put("openapi.json", openApi());
    seen.putAll(club.calls("answers.yaml", "answers"));
    seen.putAll(club.visits("pages.yaml", "pages"));
    hosts.say("chat.example.org", InetAddress.getByName("8.8.8.8"));
    data.make();
    MadeNow.byHand(backups);
    lookAtAll();
    club.calls("examples.yaml", "");
    lookAtAll();
    club.calls("noticed.yaml", "");
    Map<String, String> examples = club.examples().files();
    DynamicTest others =
        DynamicTest.dynamicTest(
            "the scripts go through and write every file",
            () -> {
              assertEquals(List.of(), club.stuck());
              SEEN.nothingElseIn("answers/", seen.keySet());
              SEEN.nothingElseIn("pages/", seen.keySet());
            });
    DynamicTest all =
        DynamicTest.dynamicTest(
            "every operation of the API has its example",
            () -> {
              EXAMPLES.nothingElseIn("", examples.keySet());
              assertEquals(Set.of(), club.examples().missing());
            });
    DynamicTest cautioned =
        DynamicTest.dynamicTest(
            "what shows settings of a powder coat shows its caution",
            () -> assertEquals(Set.of(), withoutCaution(seen)));
    return Stream.of(held(SEEN, seen), held(EXAMPLES, examples), Stream.of(others, all, cautioned))
        .flatMap(tests -> tests);
  }

  /** Only what has a powder coat is worked at this speed in the club. */
  private static final Pattern COATED = Pattern.compile("25\\.4 mm/s|\"value\" : 25\\.4\\b");

  /** The pages and answers with such settings that say nothing of pigments. */
  private static Set<String> withoutCaution(Map<String, String> seen) {
    return seen.entrySet().stream()
        .filter(file -> COATED.matcher(file.getValue()).find())
        .filter(
            file ->
                !file.getValue().contains("coatings-unknown-pigments")
                    && !file.getValue().contains("umes from pigments and binders"))
        .map(Map.Entry::getKey)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Stream<DynamicTest> held(Golden files, Map<String, String> seen) {
    return seen.entrySet().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getKey(), () -> files.hold(file.getKey(), file.getValue())));
  }

  private void lookAtAll() {
    while (rules.some()) {
      // a bounded step each time
    }
  }

  private void give(String handle, String role) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery("update member set role = :role where handle = :handle")
                    .setParameter("role", role)
                    .setParameter("handle", handle)
                    .executeUpdate());
  }

  private static String openApi() {
    String document =
        given().accept("application/json").get("/api/v1/openapi.json").then().extract().asString();
    return LittleClub.sorted(document) + "\n";
  }
}
