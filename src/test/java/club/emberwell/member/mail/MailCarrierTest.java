package club.emberwell.member.mail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.smallrye.config.SmallRyeConfigBuilder;
import io.vertx.core.Vertx;
import io.vertx.ext.mail.MailMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;

/** A mail server that takes a connection and says nothing. */
class MailCarrierTest {
  @Test
  void aServerThatNeverAnswersIsGivenUpAndKeepsNoConnection() throws IOException {
    Vertx vertx = Vertx.vertx();
    try (ServerSocket server = new ServerSocket(0, 10, InetAddress.getLoopbackAddress())) {
      MailCarrier carrier = new MailCarrier(vertx, config(server), "https://emberwell.example");
      MailMessage letter =
          new MailMessage("club@post.example", "a@elm-mail.example", "Your address", "Changed.");
      RuntimeException thrown = assertThrows(RuntimeException.class, () -> carrier.hand(letter));
      assertEquals("no answer within 1 s", thrown.getMessage());
      try (Socket kept = server.accept()) {
        kept.setSoTimeout(30_000);
        assertEquals(-1, kept.getInputStream().read(), "the end of the connection");
      }
    } finally {
      vertx.close().toCompletionStage().toCompletableFuture().join();
    }
  }

  private static MailConfig config(ServerSocket server) {
    return new SmallRyeConfigBuilder()
        .withMapping(MailConfig.class)
        .addDiscoveredConverters()
        .withDefaultValue("emberwell.mail.host", "127.0.0.1")
        .withDefaultValue("emberwell.mail.port", Integer.toString(server.getLocalPort()))
        .withDefaultValue("emberwell.mail.start-tls", "DISABLED")
        .withDefaultValue("emberwell.mail.timeout", "1S")
        .build()
        .getConfigMapping(MailConfig.class);
  }
}
