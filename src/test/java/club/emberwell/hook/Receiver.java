package club.emberwell.hook;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** Some other program on this machine that is told what happens in the club. */
final class Receiver implements AutoCloseable {
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final HttpServer server;
  private final List<Received> received = new CopyOnWriteArrayList<>();
  volatile int status = 204;

  /** A delivery as it came, headers by lower-case name. */
  record Received(Map<String, String> headers, String body) {}

  Receiver() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(threads);
    server.createContext(
        "/",
        exchange -> {
          Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
          exchange.getRequestHeaders().forEach((name, all) -> headers.put(name, all.get(0)));
          String body =
              new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
          received.add(new Received(headers, body));
          exchange.getResponseHeaders().add("Location", "/elsewhere");
          exchange.sendResponseHeaders(status, -1);
          exchange.close();
        });
    server.start();
  }

  int port() {
    return server.getAddress().getPort();
  }

  List<Received> received() {
    return List.copyOf(received);
  }

  void forget() {
    received.clear();
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}
