package club.emberwell.member.sso;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import club.emberwell.member.sso.ProviderClient.KeysFetcher;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where a redirect could lead nobody has looked at: OWASP ASVS 5.0.0, V15.3.2. */
class KeysFetcherTest {
  private static final String KEYS = "{\"keys\": []}";

  private final AtomicInteger led = new AtomicInteger();
  private HttpServer server;

  @BeforeEach
  void start() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/keys", exchange -> answer(exchange, 200));
    server.createContext(
        "/moved",
        exchange -> {
          exchange.getResponseHeaders().set("Location", "/inside");
          answer(exchange, 302);
        });
    server.createContext(
        "/inside",
        exchange -> {
          led.incrementAndGet();
          answer(exchange, 200);
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private static void answer(HttpExchange exchange, int status) throws IOException {
    byte[] bytes = KEYS.getBytes(StandardCharsets.US_ASCII);
    exchange.sendResponseHeaders(status, bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }

  private URL at(String path) throws IOException {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + path).toURL();
  }

  @Test
  void keysComeFromWhereTheDocumentSaysAndNoRedirectIsFollowed() throws IOException {
    KeysFetcher fetcher = new KeysFetcher(5000);
    assertEquals(KEYS, fetcher.retrieveResource(at("/keys")).getContent());
    assertThrows(IOException.class, () -> fetcher.retrieveResource(at("/moved")));
    assertEquals(0, led.get());
  }
}
