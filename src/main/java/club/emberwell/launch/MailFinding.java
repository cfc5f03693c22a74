package club.emberwell.launch;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/** Whether the mail server takes this one: greeting, EHLO and QUIT of RFC 5321, nothing sent. */
final class MailFinding {
  private static final String WHAT = "mail";
  private static final int PATIENCE_MS = 5_000;

  /** A server that never ends its answer is none; RFC 5321 servers say some ten lines. */
  private static final int LINES = 100;

  private final Given given;
  private final String name;

  /**
   * @param publicUrl whose host this server calls itself
   */
  MailFinding(Given given, String publicUrl) {
    this.given = given;
    this.name = URI.create(publicUrl).getHost();
  }

  Finding look() {
    Optional<String> host = given.value("emberwell.mail.host");
    if (host.isEmpty()) {
      return Finding.ok(WHAT, "No mail server is named, so nothing is sent.");
    }
    int port = Integer.parseInt(given.valueOrDefault("emberwell.mail.port"));
    String server = host.get() + ":" + port;
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(host.get(), port), PATIENCE_MS);
      socket.setSoTimeout(PATIENCE_MS);
      return isTls() ? inside(tls(socket, host.get(), port), server) : inside(socket, server);
    } catch (IOException e) {
      return Finding.fail(WHAT, server + " cannot be reached: " + e.getMessage() + ".");
    }
  }

  private boolean isTls() {
    Setting tls = Settings.known().named("emberwell.mail.tls").orElseThrow();
    return Kinds.isYes(new SettingsCheck(given).effective(tls).orElse("false"));
  }

  private static Socket tls(Socket plain, String host, int port) throws IOException {
    SSLSocket secured =
        (SSLSocket)
            ((SSLSocketFactory) SSLSocketFactory.getDefault())
                .createSocket(plain, host, port, true);
    secured.startHandshake();
    return secured;
  }

  private Finding inside(Socket socket, String server) throws IOException {
    BufferedReader in =
        new BufferedReader(
            new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
    String greeting = answer(in);
    if (!greeting.startsWith("220")) {
      return Finding.fail(WHAT, server + " does not greet as a mail server: " + first(greeting));
    }
    say(socket, "EHLO " + name);
    String offered = answer(in);
    if (!offered.startsWith("250")) {
      return Finding.fail(WHAT, server + " does not take " + name + ": " + first(offered));
    }
    say(socket, "QUIT");
    boolean required =
        given
            .valueOrDefault("emberwell.mail.start-tls")
            .toUpperCase(Locale.ROOT)
            .equals("REQUIRED");
    if (required && !isTls() && !offered.toUpperCase(Locale.ROOT).contains("STARTTLS")) {
      return Finding.fail(
          WHAT,
          server
              + " offers no STARTTLS, which is required; another port, or set"
              + " EMBERWELL_MAIL_TLS or EMBERWELL_MAIL_START_TLS.");
    }
    return Finding.ok(WHAT, server + " answers; nothing was sent.");
  }

  private static void say(Socket socket, String line) throws IOException {
    socket.getOutputStream().write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
    socket.getOutputStream().flush();
  }

  /** All lines of one answer: the last has no hyphen behind its number. */
  private static String answer(BufferedReader in) throws IOException {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < LINES; i++) {
      String line = in.readLine();
      if (line == null) {
        break;
      }
      all.append(line).append('\n');
      if (!line.matches("\\d{3}-.*")) {
        break;
      }
    }
    return all.toString();
  }

  private static String first(String answer) {
    return answer.lines().findFirst().orElse("it said nothing");
  }
}
