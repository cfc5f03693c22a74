package club.emberwell.access;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

/** Signs invented people up over the API. */
public final class People {
  public static final String PASSWORD = "copper kettle 81 moss";
  private static final AtomicInteger COUNT = new AtomicInteger();

  private People() {}

  /** Somebody with a token. */
  public record Person(String handle, String id, String token, String tokenId) {
    /** A JSON request of this person. */
    public RequestSpecification asks() {
      return given().contentType(ContentType.JSON).header("Authorization", "Bearer " + token);
    }

    /**
     * Posts what is to be made.
     *
     * @param path below the API's base
     * @return its id
     */
    public String makes(String path, Object body) {
      return asks()
          .header("Idempotency-Key", UUID.randomUUID().toString())
          .body(body)
          .post("/api/v1/" + path)
          .then()
          .statusCode(201)
          .extract()
          .path("id");
    }
  }

  /** A name nobody has yet. */
  public static String freshHandle() {
    return "p" + Long.toString(System.nanoTime(), 36) + "-" + COUNT.incrementAndGet();
  }

  /** A new member with a token. */
  public static Person join() {
    String handle = freshHandle();
    String id =
        json(Map.of("handle", handle, "password", PASSWORD))
            .post("/api/v1/members")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    return withToken(handle, id);
  }

  /** The same person with another token; its scopes are those of the present role. */
  public static Person again(Person person) {
    return withToken(person.handle(), person.id());
  }

  private static Person withToken(String handle, String id) {
    var token =
        json(Map.of("handle", handle, "password", PASSWORD, "label", "test"))
            .post("/api/v1/tokens")
            .then()
            .statusCode(201)
            .extract();
    return new Person(handle, id, token.path("token"), token.path("id"));
  }

  /** An anonymous JSON request. */
  public static RequestSpecification json(Object body) {
    return given().contentType(ContentType.JSON).body(body);
  }
}
