package club.emberwell.web.club;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.ClosedClub;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What those in charge do in a browser, and those who come in by what they did. */
@QuarkusTest
@TestProfile(ClosedClub.class)
class ClubPagesTest {
  @Inject ClubOptions club;
  @Inject Staff staff;

  @BeforeEach
  void close() {
    club.door(Door.INVITATION);
  }

  @Test
  void aModeratorMakesALinkAndAStrangerComesInByIt() {
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    moderator.get("/desk/invitations").tidy();
    moderator.send("main form", Map.of("note", "fair", "uses", "many", "days", "3"));
    assertEquals(422, moderator.status());
    moderator.tidy();
    assertTrue(moderator.page().title().startsWith("Error: "));
    assertEquals("many", moderator.field("uses"));
    moderator.send("main form", Map.of("note", "fair", "uses", "1", "days", "3"));
    assertEquals(200, moderator.status());
    String link = moderator.tidy().page().select(".box-good code").text();
    String path = link.replaceFirst("^https?://[^/]+", "");
    Browser stranger = new Browser().get(path).tidy();
    String handle = People.freshHandle();
    stranger.send("main form", Map.of("handle", handle, "password", "short"));
    assertEquals(422, stranger.status());
    assertEquals(handle, stranger.field("handle"));
    stranger.send("main form", Map.of("handle", handle, "password", People.PASSWORD));
    assertEquals(303, stranger.status());
    assertEquals("/bench", stranger.location());
    assertEquals(404, new Browser().get(path).tidy().status());
    assertTrue(new Browser().get("/sign-up").tidy().page().text().contains("by invitation"));
  }

  @Test
  void aStrangerAsksAndAModeratorDecides() {
    club.door(Door.REQUEST);
    Browser stranger = new Browser().get("/sign-up").tidy();
    String handle = People.freshHandle();
    stranger.send("main form", Map.of("handle", handle, "password", People.PASSWORD));
    assertEquals(422, stranger.status());
    stranger
        .tidy()
        .send(
            "main form",
            Map.of("handle", handle, "password", People.PASSWORD, "request", "A shed and a tube."));
    assertEquals(200, stranger.status());
    assertEquals("Request sent", stranger.tidy().page().selectFirst("h1").text());
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    moderator.get("/desk/requests").tidy();
    String form = "main section:contains(" + handle + ") form";
    moderator.send(form, Map.of("reason", ""), Map.of("accept", "false"));
    assertEquals(422, moderator.status());
    moderator.tidy().send(form, Map.of("reason", "Welcome."), Map.of("accept", "true"));
    assertEquals(303, moderator.status());
    Browser.of(new Person(handle, "", "", ""));
  }

  @Test
  void anOwnerChangesTheClubGivesRolesAndMakesALinkForALostPassword() {
    Browser owner = Browser.of(staff.person(Role.OWNER));
    owner.get("/desk/club").tidy();
    owner.send("main form", Map.of("name", ""));
    assertEquals(422, owner.status());
    owner.tidy().send("main form", Map.of("name", "The Cinder Yard", "door", "request"));
    assertEquals(303, owner.status());
    assertTrue(owner.follow().page().title().contains("The Cinder Yard"));
    Person other = staff.person(Role.MEMBER);
    owner.get("/desk/club/people").tidy();
    owner.send(
        "main form", Map.of("handle", other.handle(), "role", "moderator", "reason", "knows wood"));
    assertEquals(303, owner.status());
    owner.follow().tidy();
    owner.send("main form[action$=link]", Map.of("for", "no-such-member"));
    assertEquals(422, owner.status());
    owner.tidy().send("main form[action$=link]", Map.of("for", other.handle()));
    String link = owner.tidy().page().select(".box-good code").text();
    Browser lost = new Browser().get(link.replaceFirst("^https?://[^/]+", "")).tidy();
    lost.send("main form", Map.of("password", "short"));
    assertEquals(422, lost.status());
    lost.tidy().send("main form", Map.of("password", "birch bark and tallow"));
    assertEquals(200, lost.status());
    assertEquals("Your password is changed", lost.tidy().page().selectFirst("h1").text());
    other.asks().get("/api/v1/me").then().statusCode(401);
    Browser again = new Browser().get("/sign-in");
    again.send("main form", Map.of("handle", other.handle(), "password", "birch bark and tallow"));
    assertEquals(303, again.status());
  }

  @Test
  void thePagesOfOwnersAreClosedToModeratorsAndThoseToMembers() {
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    assertEquals(403, moderator.get("/desk/club").status());
    assertEquals(403, moderator.get("/desk/club/people").status());
    Browser member = Browser.of(staff.person(Role.MEMBER));
    assertEquals(403, member.get("/desk/requests").status());
    assertEquals(403, member.get("/desk/invitations").status());
    assertEquals(401, new Browser().get("/desk/invitations").status());
  }
}
