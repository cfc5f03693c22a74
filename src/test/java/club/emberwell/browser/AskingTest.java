package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a question shows its writer before it is posted. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class AskingTest extends BrowserTest {
  @Test
  void whatIsKnownComesWhileATitleIsTyped() {
    Person person = People.join();
    try (Visit visit = chromium.visit(Screen.PHONE, true, null)) {
      visit.signIn(person.handle(), People.PASSWORD);
      visit.open("/ask/new");
      visit.one("#title").pressSequentially("Slate stays grey");
      assertThat(visit.one("#so-far")).containsText("Similar so far");
      assertThat(visit.one("#so-far a[href='/?material=slate']")).isVisible();
      visit.fill(Map.of("title", "Leather smells burnt for weeks"));
      assertThat(visit.one("#so-far a[href='/?material=slate']")).hasCount(0);
      visit.noComplaints();
    }
  }
}
