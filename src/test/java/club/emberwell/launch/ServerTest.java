package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ServerTest {
  /** RFC 5321, 4.1.1.1: a name that leads back to this server, not the machine's own. */
  @Test
  void mailIsHandedOverUnderTheNameThatMembersUse() {
    assertEquals(
        Map.of("quarkus.mailer.own-host-name", "club.example"),
        Server.greeting("https://club.example:8443/"));
  }
}
