package club.emberwell.hook;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;

import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.desk.Cast;
import club.emberwell.desk.flag.Flags;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** A club, and some other program that is told what happens in it. */
abstract class ToldClub {
  static final String RESULTS = "result.posted";

  @Inject Webhooks hooks;
  @Inject HookMatcher matcher;
  @Inject HookSender sender;
  @Inject DeliveryRepository deliveries;
  @Inject KnownHosts hosts;
  @Inject Cast cast;
  @Inject Staff staff;
  @Inject Flags flags;
  @Inject ObjectMapper json;

  Receiver receiver;
  Person owner;
  Actor member;

  @BeforeEach
  void begin() throws IOException {
    cast.run("delete from webhook");
    receiver = new Receiver();
    // application.properties allows this name in tests
    hosts.say("receiver.test", InetAddress.getLoopbackAddress());
    owner = staff.person(Role.OWNER);
    member = cast.member();
    match();
  }

  @AfterEach
  void end() {
    receiver.close();
  }

  /** Until all is seen that was committed. */
  void match() {
    await()
        .atMost(Duration.ofSeconds(30))
        .pollDelay(Duration.ZERO)
        .pollInterval(Duration.ofMillis(10))
        .until(
            () -> {
              while (matcher.some()) {
                continue;
              }
              return cast.count(
                      """
                      select count(*) from change_row c, change_reader p
                      where p.name = 'webhooks'
                        and (cast(cast(c.xid as text) as bigint), c.seq) > (p.xid, p.seq)""")
                  == 0;
            });
  }

  void tell() {
    match();
    while (sender.some() > 0) {
      continue;
    }
  }

  String url() {
    return "http://receiver.test:" + receiver.port() + "/hook?key=of-the-chat";
  }

  String add(String... events) {
    return given()
        .spec(owner.asks())
        .body(Map.of("label", "Chat", "url", url(), "events", List.of(events)))
        .post("/api/v1/webhooks")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  List<JsonNode> told() throws IOException {
    List<JsonNode> bodies = new ArrayList<>();
    for (Receiver.Received one : receiver.received()) {
      bodies.add(json.readTree(one.body()));
    }
    return bodies;
  }

  void due() {
    cast.run("update webhook_delivery set due_at = now() where state = 'waiting'");
  }

  long count(String where) {
    return cast.count("select count(*) from webhook_delivery where " + where);
  }
}
