package club.emberwell.web.club;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.List;
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
  void afterTheLastAnswerToARequestTheModeratorIsLedToWhatWaitsNext() {
    club.door(Door.REQUEST);
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    moderator.get("/desk/requests");
    while (!moderator.page().select("main section form").isEmpty()) {
      moderator.send("main section form", Map.of("reason", ""), Map.of("accept", "true"));
      moderator.get("/desk/requests");
    }
    List<String> handles = List.of(asks(), asks(), asks());
    String at = moderator.get("/desk/next").location();
    for (int i = 0; i < 300 && !at.startsWith("/desk/requests"); i++) {
      String place = at.substring(at.indexOf("place=") + "place=".length());
      at = moderator.get("/desk/next?by=worst&after=" + place).location();
    }
    assertTrue(at.startsWith("/desk/requests?by=worst&place="), at);
    moderator.get(at).tidy();
    String turn = at.substring(at.indexOf("by="));
    assertEquals(1, moderator.page().select("main a:contains(Skip)").size());
    assertEquals("", moderator.page().select(".notice-strip").text());
    answer(moderator, handles.get(1), "", "false");
    assertEquals(422, moderator.status());
    answer(moderator, handles.get(1), "We are full.", "false");
    assertEquals("/desk/requests?done=out&" + turn, moderator.location(), "two are left");
    assertTrue(moderator.follow().tidy().page().text().contains("They see the reason"));
    answer(moderator, handles.get(0), "", "true");
    assertEquals("/desk/requests?done=in&" + turn, moderator.location(), "one is left");
    assertTrue(moderator.follow().tidy().page().text().contains("Approved."));
    answer(moderator, handles.get(2), "", "true");
    String place = turn.substring(turn.indexOf("place=") + "place=".length());
    assertEquals("/desk/next?by=worst&after=" + place + "&done=yes", moderator.location());
    assertFalse(moderator.follow().location().startsWith("/desk/requests"));
    assertTrue(moderator.follow().tidy().page().text().contains("Saved."));
  }

  private static String asks() {
    Browser stranger = new Browser().get("/sign-up");
    String handle = People.freshHandle();
    stranger.send(
        "main form", Map.of("handle", handle, "password", People.PASSWORD, "request", "A shed."));
    assertEquals(200, stranger.status());
    return handle;
  }

  private static void answer(Browser moderator, String handle, String reason, String accept) {
    String form = "main section:contains(" + handle + ") form";
    moderator.send(form, Map.of("reason", reason), Map.of("accept", accept));
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
