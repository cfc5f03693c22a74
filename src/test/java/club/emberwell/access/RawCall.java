package club.emberwell.access;

import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.URL;
import java.nio.charset.StandardCharsets;

/** A connection on which a test says HTTP word by word, as no client would. */
public final class RawCall implements Closeable {
  private static final int PATIENCE_MS = 60_000;

  private final Socket socket;
  private final BufferedReader in;

  /** Connects to the host and port of an address. */
  public RawCall(URL server) throws IOException {
    socket = new Socket(server.getHost(), server.getPort());
    socket.setSoTimeout(PATIENCE_MS);
    in =
        new BufferedReader(
            new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1));
  }

  public void send(String text) throws IOException {
    socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
    socket.getOutputStream().flush();
  }

  /** The same to somebody who may have hung up: false. */
  public boolean sent(String text) {
    try {
      send(text);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** The next line that comes; empty lines are skipped, null at the end. */
  public String line() throws IOException {
    String line = in.readLine();
    while (line != null && line.isEmpty()) {
      line = in.readLine();
    }
    return line;
  }

  /** All that comes until the other side hangs up. */
  public String answer() throws IOException {
    StringBuilder all = new StringBuilder();
    try {
      for (int c = in.read(); c >= 0; c = in.read()) {
        all.append((char) c);
      }
    } catch (java.net.SocketException e) {
      // reset by a server that hangs up on what is still being sent
      return all.toString();
    }
    return all.toString();
  }

  /** Hangs up at once (RST), as a phone that loses its network does. */
  public void reset() throws IOException {
    socket.setSoLinger(true, 0);
    socket.close();
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
