package club.emberwell.web.club;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Owners end the sessions of one or of all (OWASP ASVS 5.0, V7.4.5). */
@QuarkusTest
class SignOutsTest {
  private static final String PAGE = "/desk/club/sign-out";
  private static final String API = "/api/v1/sign-outs";

  @Inject Staff staff;
  @Inject EntityManager db;

  private Person owner;
  private Person member;

  @BeforeEach
  void people() {
    owner = staff.person(Role.OWNER);
    member = staff.person(Role.MEMBER);
  }

  private static boolean isIn(Browser browser) {
    return browser.get("/me").status() == 200;
  }

  private static boolean works(Person token) {
    return token.asks().get("/api/v1/me").statusCode() == 200;
  }

  @Test
  void oneMemberIsSignedOutEverywhereAndNobodyElse() {
    Browser here = Browser.of(owner);
    Browser theirs = Browser.of(member);
    here.get(PAGE).tidy().send("main form", Map.of("handle", member.handle(), "reason", "Lost."));
    assertEquals(303, here.status());
    assertTrue(here.follow().tidy().page().text().contains("has to sign in again"));
    assertTrue(!isIn(theirs) && !works(member));
    assertTrue(isIn(here) && works(owner));
    assertTrue(isIn(Browser.of(member)), "the password is still theirs");
    assertEquals("Lost. {tokens=ended}", logged("member", member.id()));
  }

  @Test
  void everybodyIsSignedOutButTheBrowserThatAsked() {
    Browser here = Browser.of(owner);
    Browser elsewhere = Browser.of(owner);
    Browser theirs = Browser.of(member);
    here.get(PAGE)
        .send("main form", Map.of("who", "everybody", "programs", "keep", "reason", "A leak."));
    assertEquals(303, here.status());
    assertTrue(isIn(here));
    assertTrue(!isIn(elsewhere) && !isIn(theirs));
    assertTrue(works(owner) && works(member));
    assertEquals("A leak. {tokens=kept}", logged("club", "everybody"));
    owner
        .asks()
        .body(Map.of("everybody", true, "reason", "More.", "password", People.PASSWORD))
        .post(API)
        .then()
        .statusCode(204);
    assertTrue(!isIn(here) && !works(owner) && !works(member));
  }

  @Test
  void aTokenAloneAndHalfAWishEndNothing() {
    owner
        .asks()
        .body(Map.of("everybody", true, "reason", "A thief's."))
        .post(API)
        .then()
        .statusCode(401)
        .header("WWW-Authenticate", containsString("insufficient_user_authentication"));
    for (Map<String, Object> wish :
        List.<Map<String, Object>>of(
            Map.of("reason", "Nobody named."),
            Map.of("handle", member.handle(), "everybody", true, "reason", "Both."),
            Map.of("handle", "nobody-at-all", "reason", "Unknown."))) {
      owner
          .asks()
          .body(wish)
          .post(API)
          .then()
          .statusCode(422)
          .body("errors[0].pointer", equalTo("/handle"));
    }
    Browser here = Browser.of(owner);
    here.get(PAGE).send("main form", Map.of("handle", "nobody-at-all", "reason", "Known."));
    assertEquals(422, here.status());
    assertEquals("Known.", here.tidy().field("reason"));
    assertTrue(works(owner) && works(member));
  }

  private String logged(String entity, String id) {
    return QuarkusTransaction.requiringNew()
        .call(
            () ->
                (String)
                    db.createNativeQuery(
                            """
                            select reason || ' {tokens=' || (detail ->> 'tokens') || '}' from audit
                            where action = 'sign-out' and entity = ?1 and entity_id = ?2
                            order by seq desc limit 1
                            """)
                        .setParameter(1, entity)
                        .setParameter(2, id)
                        .getSingleResult());
  }
}
