package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ServerTest {
  @Test
  void forwardedHeadersAreBelievedOfTheProxiesThatAreNamed() {
    assertEquals(
        Map.of(
            "emberwell.trusted-proxies", "10.0.0.7,10.0.1.0/24",
            "quarkus.http.proxy.proxy-address-forwarding", "true",
            "quarkus.http.proxy.trusted-proxies", "10.0.0.7,10.0.1.0/24"),
        Server.believing("10.0.0.7,10.0.1.0/24"));
  }
}
