package club.emberwell.web.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.api.member.Staff;
import club.emberwell.desk.Cast;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Days of the desk begin where the moderator's browser is. */
@QuarkusTest
class DeskDaysTest {
  @Inject Cast cast;
  @Inject Staff staff;

  @Test
  void todayIsWhereTheModeratorIs() {
    Actor author = cast.member();
    UUID report = cast.report(author).id();
    ZoneId auckland = ZoneId.of("Pacific/Auckland");
    ZoneId angeles = ZoneId.of("America/Los_Angeles");
    Instant there = LocalDate.now(auckland).atStartOfDay(auckland).toInstant();
    Instant here = LocalDate.now(angeles).atStartOfDay(angeles).toInstant();
    Duration apart = Duration.between(here, there);
    Instant between = here.plus(apart.dividedBy(2));
    cast.run("update entry set created_at = '%s' where id = '%s'".formatted(between, report));
    // whose day began earlier has the entry in it
    assertEquals(apart.isNegative() ? 1 : 0, undone(author, auckland));
    assertEquals(apart.isNegative() ? 0 : 1, undone(author, angeles));
  }

  /** How many steps an undo of a member's day takes, for a moderator whose browser says a zone. */
  private int undone(Actor author, ZoneId zone) {
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    String today = "/desk/undos/new?member=" + author.memberId() + "&since=today&zone=" + zone;
    String steps = moderator.get(today).tidy().page().select("#found").text();
    return Integer.parseInt(steps.substring(0, steps.indexOf(' ')));
  }
}
