package club.emberwell.member.mail;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;

/** As much of RFC 5321 as a client needs that hands over a letter: keeps every line as it came. */
public class RawSmtp implements QuarkusTestResourceLifecycleManager {
  private final List<String> greetings = new CopyOnWriteArrayList<>();
  private final List<String> letters = new CopyOnWriteArrayList<>();
  private ServerSocket server;
  private volatile String refusal;

  @Override
  public Map<String, String> start() {
    try {
      server = new ServerSocket(0, 10, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Thread listener = new Thread(this::listen, "raw-smtp");
    listener.setDaemon(true);
    listener.start();
    return Map.of(
        "emberwell.public-url", "https://emberwell.example",
        "emberwell.mail.host", "127.0.0.1",
        "emberwell.mail.port", Integer.toString(server.getLocalPort()),
        "emberwell.mail.from", "club@post.example",
        "emberwell.mail.start-tls", "DISABLED",
        "emberwell.mail.every", "24h");
  }

  private void listen() {
    while (!server.isClosed()) {
      try {
        Socket client = server.accept();
        // one that is refused may stay, and the next letter come by another
        Thread talk = new Thread(() -> talk(client), "raw-smtp-client");
        talk.setDaemon(true);
        talk.start();
      } catch (IOException e) {
        // the end of the test
      }
    }
  }

  private void talk(Socket socket) {
    try (Socket client = socket) {
      converse(client);
    } catch (IOException e) {
      // it went away
    }
  }

  private void converse(Socket client) throws IOException {
    BufferedReader in =
        new BufferedReader(
            new InputStreamReader(client.getInputStream(), StandardCharsets.ISO_8859_1));
    OutputStream out = client.getOutputStream();
    say(out, "220 raw.example");
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      String verb = line.length() < 4 ? line : line.substring(0, 4).toUpperCase();
      if (verb.equals("EHLO") || verb.equals("HELO")) {
        greetings.add(line);
      }
      if (verb.equals("DATA")) {
        say(out, "354 go on");
        letters.add(letter(in));
      }
      String fine = verb.equals("QUIT") ? "221 bye" : "250 fine";
      say(out, verb.equals("RCPT") && refusal != null ? refusal : fine);
    }
  }

  private static String letter(BufferedReader in) throws IOException {
    StringBuilder letter = new StringBuilder();
    for (String line = in.readLine(); !".".equals(line); line = in.readLine()) {
      letter.append(line).append("\r\n");
    }
    return letter.toString();
  }

  private static void say(OutputStream out, String line) throws IOException {
    out.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
    out.flush();
  }

  /** What it answers from now on to each address; null takes all. */
  void refuse(String answer) {
    refusal = answer;
  }

  List<String> greetings() {
    return greetings;
  }

  List<String> letters() {
    return letters;
  }

  @Override
  public void inject(TestInjector injector) {
    injector.injectIntoFields(
        this, field -> field.getType().getName().equals(getClass().getName()));
  }

  @Override
  public void stop() {
    try {
      server.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
