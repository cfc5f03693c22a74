package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Days of one's account are those of the clock that the browser goes by, without scripts UTC. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class OwnDaysTest extends BrowserTest {
  private static final String SIGNED_IN = "#sessions ~ ul small";
  private static final ZoneId AUCKLAND = ZoneId.of("Pacific/Auckland");
  private static final ZoneId LOS_ANGELES = ZoneId.of("America/Los_Angeles");

  @Inject EntityManager db;

  private void signedIn(Instant at) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        """
                        update session set created_at = :at
                        where member_id = (select id from member where handle = :handle)\
                        """)
                    .setParameter("at", at)
                    .setParameter("handle", READER)
                    .executeUpdate());
  }

  private void says(ZoneId zone, boolean scripts, String when) {
    try (Visit visit = chromium.as(READER, zone, scripts)) {
      visit.open("/me");
      assertThat(visit.one(SIGNED_IN).first()).containsText("signed in " + when);
      visit.noComplaints();
    }
  }

  private static String on(Instant at, ZoneId zone) {
    return "on "
        + DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH).format(at.atZone(zone));
  }

  private static Instant today(ZoneId zone) {
    return LocalDate.now(zone).atStartOfDay(zone).toInstant();
  }

  @Test
  void aDayIsThatOfWhoeverReadsIt() {
    try (Visit first = as(READER, Screen.PHONE)) {
      first.open("/me");
    }
    Duration apart = Duration.between(today(LOS_ANGELES), today(AUCKLAND));
    Instant between = today(LOS_ANGELES).plus(apart.dividedBy(2));
    signedIn(between);
    // whose day began earlier has it today
    says(AUCKLAND, true, apart.isNegative() ? "today" : "yesterday");
    says(LOS_ANGELES, true, apart.isNegative() ? "yesterday" : "today");
  }

  @Test
  void withoutScriptsADayIsOfUtcAndAClockThatWasChangedShiftsNone() {
    try (Visit first = as(READER, Screen.PHONE)) {
      first.open("/me");
    }
    // half an hour before midnight of UTC, which is the next day in Auckland, in summer and winter
    for (String day : new String[] {"2026-01-12T23:30:00Z", "2026-07-12T23:30:00Z"}) {
      Instant at = Instant.parse(day);
      signedIn(at);
      says(AUCKLAND, false, on(at, ZoneOffset.UTC));
      says(AUCKLAND, true, on(at, AUCKLAND));
      says(LOS_ANGELES, true, on(at, LOS_ANGELES));
    }
  }
}
