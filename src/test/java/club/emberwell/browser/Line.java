package club.emberwell.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The line between a phone and the server, which can be cut, and can lose the answer to a form that
 * the server has dealt with. Sees every request, those of a service worker too.
 */
final class Line implements AutoCloseable {
  private static final int BUFFER = 16 * 1024;

  private final URI server;
  private final ServerSocket door;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private volatile boolean cut;
  private volatile boolean losing;

  private Line(URI server, ServerSocket door) {
    this.server = server;
    this.door = door;
  }

  static Line to(URI server) throws IOException {
    Line line = new Line(server, new ServerSocket(0, 50, InetAddress.getLoopbackAddress()));
    start(line::answerTheDoor);
    return line;
  }

  /** The address of the server through this line. */
  String address() {
    return "http://localhost:" + door.getLocalPort();
  }

  void cut() {
    cut = true;
    open.forEach(Line::end);
  }

  void mend() {
    cut = false;
    losing = false;
  }

  /** From now on what the server answers to a form never arrives, and the line is cut after it. */
  void loseTheAnswerToAForm() {
    losing = true;
  }

  private void answerTheDoor() {
    while (!door.isClosed()) {
      try {
        Socket phone = door.accept();
        open.add(phone);
        if (cut) {
          end(phone);
        } else {
          Socket far = new Socket(server.getHost(), server.getPort());
          open.add(far);
          Talk talk = new Talk(phone, far);
          start(talk::up);
          start(talk::down);
        }
      } catch (IOException e) {
        // the door is closed, or the server is
      }
    }
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "line");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * One connection; forms go up alone on it as browsers send no second request before an answer.
   */
  private final class Talk {
    private final Socket phone;
    private final Socket far;
    private volatile boolean form;

    private Talk(Socket phone, Socket far) {
      this.phone = phone;
      this.far = far;
    }

    private void up() {
      pump(
          phone,
          far,
          bytes ->
              form = form || new String(bytes, StandardCharsets.ISO_8859_1).startsWith("POST "));
    }

    private void down() {
      pump(far, phone, bytes -> {});
    }

    private void pump(Socket from, Socket to, java.util.function.Consumer<byte[]> seen) {
      try {
        InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream();
        byte[] buffer = new byte[BUFFER];
        for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
          seen.accept(java.util.Arrays.copyOf(buffer, read));
          if (from == far && form && losing) {
            cut();
          }
          out.write(buffer, 0, read);
          out.flush();
        }
      } catch (IOException e) {
        // cut, or left
      } finally {
        end(from);
        end(to);
      }
    }
  }

  private static void end(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // it is gone anyway
    }
  }

  @Override
  public void close() throws IOException {
    door.close();
    open.forEach(Line::end);
  }
}
