package club.emberwell.launch;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;

/** A network between two processes of this machine, which can be cut, or fall silent. */
final class Relay implements AutoCloseable {
  /** What becomes of bytes and connections. */
  enum State {
    /** All pass. */
    OPEN,
    /** Connections stay, nothing passes, nobody is told. */
    SILENT,
    /** Connections break, new ones are refused. */
    CUT
  }

  private final ServerSocket entrance;
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private volatile int target;
  private volatile State state = State.OPEN;

  Relay(int target) throws IOException {
    this.target = target;
    entrance = new ServerSocket(PackagedProgram.freePort(), 200, InetAddress.getLoopbackAddress());
    daemon(this::accept);
  }

  int port() {
    return entrance.getLocalPort();
  }

  /** Leads new connections to another port. */
  void leadTo(int port) {
    target = port;
  }

  void set(State next) {
    state = next;
    if (next == State.CUT) {
      sockets.forEach(Relay::end);
    }
  }

  @Override
  public void close() throws IOException {
    set(State.CUT);
    entrance.close();
  }

  private void accept() {
    while (!entrance.isClosed()) {
      try {
        connect(entrance.accept());
      } catch (IOException e) {
        // closed, or nobody listens behind it
      }
    }
  }

  private void connect(Socket near) throws IOException {
    Socket far = new Socket();
    sockets.add(near);
    sockets.add(far);
    try {
      if (state == State.CUT) {
        throw new IOException("cut");
      }
      far.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), target), 5_000);
      daemon(() -> pass(near, far));
      daemon(() -> pass(far, near));
    } catch (IOException e) {
      end(near);
      end(far);
    }
  }

  private void pass(Socket from, Socket to) {
    byte[] some = new byte[16_384];
    try {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int n = in.read(some); n >= 0; n = in.read(some)) {
        while (state == State.SILENT) {
          LockSupport.parkNanos(20_000_000);
        }
        out.write(some, 0, n);
      }
    } catch (IOException e) {
      // one side is gone
    } finally {
      end(from);
      end(to);
      sockets.remove(from);
      sockets.remove(to);
    }
  }

  private static void end(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void daemon(Runnable work) {
    Thread thread = new Thread(work, "relay");
    thread.setDaemon(true);
    thread.start();
  }
}
