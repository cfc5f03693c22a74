package club.emberwell.api.desk;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;

/** Two members, two moderators, and how they call the desk. */
abstract class DeskCalls {
  @Inject Staff staff;

  Person author;
  Person member;
  Person moderator;
  Person second;

  @BeforeEach
  void people() {
    author = People.join();
    member = People.join();
    moderator = staff.person(Role.MODERATOR);
    second = staff.person(Role.MODERATOR);
  }

  static ValidatableResponse post(Person by, String path, Object body) {
    return by.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + path)
        .then();
  }

  static ValidatableResponse get(Person by, String path) {
    return by.asks().get("/api/v1/" + path).then();
  }

  static Map<String, Object> body(Object... pairs) {
    Map<String, Object> body = new HashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      body.put((String) pairs[i], pairs[i + 1]);
    }
    return body;
  }
}
