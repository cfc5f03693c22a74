package club.emberwell.member.mail;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Map;

/** A real SMTP server beside the tests, which wants a name and a password before it takes mail. */
public class SmtpServer implements QuarkusTestResourceLifecycleManager {
  private static final String USER = "club";
  private static final String PASSWORD = "quiet letterbox";

  private GreenMail server;

  /** Gives the club its name and password there, which a stopped server forgets. */
  static void letIn(GreenMail server) {
    server.setUser("club@post.example", USER, PASSWORD);
  }

  /** A port that is the same after a stop and a start. */
  private static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public Map<String, String> start() {
    server = new GreenMail(new ServerSetup(freePort(), "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    server.start();
    letIn(server);
    return Map.of(
        "emberwell.mail.host", "127.0.0.1",
        "emberwell.mail.port", Integer.toString(server.getSmtp().getPort()),
        "emberwell.mail.from", "club@post.example",
        "emberwell.mail.user", USER,
        "emberwell.mail.password", PASSWORD,
        "emberwell.mail.start-tls", "DISABLED",
        // tests send by themselves
        "emberwell.mail.every", "24h",
        "emberwell.mail.first-pause", "1s");
  }

  @Override
  public void inject(TestInjector injector) {
    injector.injectIntoFields(
        server, field -> field.getType().getName().equals(GreenMail.class.getName()));
  }

  @Override
  public void stop() {
    server.stop();
  }
}
