package club.emberwell.browser;

import static io.restassured.RestAssured.get;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.exchange.ScenarioLoader;
import club.emberwell.talk.Matching;
import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URL;
import java.time.Duration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;

/** What all browser tests share: the invented club and a browser for the class. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class BrowserTest {
  /** A member with machines and reports. */
  static final String MEMBER = "ashgrove";

  /** A member with neither. */
  static final String READER = "justlooking";

  static final String MODERATOR = "dovetail";

  /** Somebody whose question was answered. */
  static final String ASKER = "nettlebed";

  static final String OWNER = "jigwright";
  private static final Duration SEEN_WITHIN = Duration.ofSeconds(30);

  @Inject ScenarioLoader loader;
  @Inject Matching matching;

  @TestHTTPResource("/")
  URL base;

  Chromium chromium;

  @BeforeAll
  void openTheClub() {
    matching.catchUp();
    ScenarioLoader.Loaded loaded = loader.load(folder());
    int expected = loaded.stored() - takenBack();
    assertTrue(loaded.asExpected(), loaded.toString());
    await("all reports are found").atMost(SEEN_WITHIN).until(() -> found() >= expected);
    matching.catchUp();
    chromium = Chromium.start(base);
  }

  /** The scenario on the class path. */
  String folder() {
    return ClubProfile.FOLDER;
  }

  /** Reports of the scenario that their authors withdrew. */
  int takenBack() {
    return 0;
  }

  @AfterAll
  void closeTheBrowser() {
    if (chromium != null) {
      chromium.close();
    }
  }

  int found() {
    return get(base + "api/v1/reports?size=1").then().statusCode(200).extract().path("total");
  }

  /** The id of the newest report that fits these filters. */
  String anyReport(String filters) {
    return get(base + "api/v1/reports?size=1&" + filters)
        .then()
        .statusCode(200)
        .extract()
        .path("hits[0].id");
  }

  /** A visit of somebody of the club. */
  Visit as(String handle, Screen screen) {
    return as(handle, screen, true);
  }

  Visit as(String handle, Screen screen, boolean scripts) {
    return chromium.as(handle, screen, scripts);
  }
}
