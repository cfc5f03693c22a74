package club.emberwell.access;

import static club.emberwell.access.People.PASSWORD;
import static club.emberwell.access.People.json;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.member.club.ClubOptions;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody passes for the club or for another member by a name. */
@QuarkusTest
class NamesTest {
  @Inject EntityManager db;
  @Inject ClubOptions club;

  private static ValidatableResponse joins(String handle) {
    return json(Map.of("handle", handle, "password", PASSWORD)).post("/api/v1/members").then();
  }

  private static void refused(String handle) {
    joins(handle).statusCode(422).body("errors[0].pointer", equalTo("/handle"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "admin",
        "Admin",
        "ADMIN",
        "adm1n",
        "ADMlN",
        "adrnin",
        "ad-min",
        "admin1",
        "admin_2",
        "owner",
        "0wner",
        "OWNER",
        "moderator",
        "m0derat0r",
        "rnoderator",
        "system",
        "sys-tem",
        "member",
        "reader",
        "emberwell",
        "ernberwell",
        "Emberwel1",
        "support",
        "former-member",
        "ashgrove-invented",
        "Ashgrove-INVENTED",
      })
  void namesOfThoseInChargeAndWhatLooksLikeThemAreNobodys(String handle) {
    refused(handle);
  }

  /** Full-width letters are the same letters (NFKC); others are letters of another script. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\uff41\uff44\uff4d\uff49\uff4e", // full width
        "\u0430dmin", // Cyrillic a
        "\u03bfwner", // Greek omicron
        "ad\u200bmin", // zero width space
        "\u202enimda", // right-to-left override
        "\u2066mallow\u2069", // isolates
        "mal\u00adlow", // soft hyphen
        "m\u0430llow",
        "mallow\u0301",
      })
  void otherScriptsAndUnseenCharactersAreRefused(String handle) {
    refused(handle);
  }

  @Test
  void theClubsOwnNameIsNobodys() {
    String before = club.clubName();
    club.clubName("The Cinder Yard");
    try {
      refused("the-cinder-yard");
      refused("TheC1nderYard");
    } finally {
      club.clubName(before);
    }
  }

  @Test
  void aNameThatLooksLikeAMembersIsRefusedButNeverItsOwn() {
    String own = "mill0" + People.freshHandle();
    joins(own).statusCode(201);
    for (String alike :
        new String[] {
          own.replace("mill0", "rnill0"),
          own.replace("mill0", "mi110"),
          own.replace("mill0", "MlLLO"),
          own.replace("-", "_"),
        }) {
      refused(alike);
    }
    json(Map.of("handle", own, "password", PASSWORD, "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(201);
  }

  /** The rows of confusables.txt (UTS 39, version 16.0.0) between letters that names can have. */
  @ParameterizedTest
  @CsvSource({"0, O", "1, l", "I, l", "m, rn"})
  void theDatabaseFoldsWhatTheStandardCallsConfusable(String source, String target) {
    assertEquals(looks("a" + target + "b"), looks("a" + source + "b"));
  }

  private Object looks(String name) {
    return db.createNativeQuery("select looks_like(?1)").setParameter(1, name).getSingleResult();
  }
}
