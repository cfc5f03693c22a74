package club.emberwell.web.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A second moderator decides about the removal of a caution. */
@QuarkusTest
class RemovalPagesTest {
  private static final String HYGIENE = "/desk/cautions/food-hygiene";

  @Inject Staff staff;

  @Test
  void afterARemovalIsConfirmedOrRefusedTheModeratorIsLedToWhatWaitsNext() {
    Browser second = Browser.of(staff.person(Role.MODERATOR));
    for (String deed : List.of("keep", "confirm")) {
      Browser first = Browser.of(staff.person(Role.MODERATOR));
      first.get(HYGIENE).send("main form", Map.of("reason", "It stands twice."));
      assertEquals(HYGIENE, first.location(), "nothing was decided");
      String at = DeskPagesTest.turnTo(second, HYGIENE);
      second.get(at).tidy();
      assertFalse(second.page().select("main a:contains(Skip)").isEmpty());
      assertEquals(HYGIENE + "/keep", second.page().selectFirst("main form").attr("action"));
      String place = at.substring(at.indexOf("place=") + "place=".length());
      assertEquals(place, second.page().select("main form input[name=place]").val());
      second.send("main form", Map.of("reason", ""));
      assertEquals(422, second.status(), "whoever keeps it says why");
      assertEquals(place, second.page().select("main form input[name=place]").val());
      second.sendTo(HYGIENE + "/" + deed, "main form", Map.of("reason", "I looked."));
      assertEquals("/desk/next?by=worst&after=" + place + "&done=yes", second.location());
      assertTrue(second.follow().location().contains("done=yes"), second.location());
      assertTrue(second.follow().tidy().page().text().contains("Saved."));
    }
    second.get(HYGIENE).send("main form", Map.of("reason", "It is needed after all."));
    assertEquals(HYGIENE, second.location(), "outside of a turn they stay");
    assertFalse(second.follow().page().text().contains("Removed."));
  }
}
