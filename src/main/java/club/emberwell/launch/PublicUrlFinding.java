package club.emberwell.launch;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;

/**
 * Whether the address that members use answers from here; a network may forbid it, so warn only.
 */
final class PublicUrlFinding {
  private static final String WHAT = "public URL";
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  /** Open to all, whatever the club's door, and cheap. */
  private static final String PATH = "/robots.txt";

  private static final int SERVER_ERROR = 500;

  /** What an operator is told where members are to send their passwords in clear. */
  static final String PLAIN =
      "passwords and sessions can be read on the way: put a proxy with TLS in front and say https.";

  private PublicUrlFinding() {}

  /** Whether other machines come by an address without TLS. */
  static boolean isPlain(String url) {
    URI uri = URI.create(url);
    String host = uri.getHost();
    boolean here = host.matches("localhost|127\\..*|\\[::1]");
    return "http".equals(uri.getScheme()) && !here;
  }

  static Finding of(String url) {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(url + PATH)).timeout(PATIENCE).GET().build();
    try {
      int status =
          HttpClient.newBuilder()
              .connectTimeout(PATIENCE)
              .build()
              .send(request, HttpResponse.BodyHandlers.discarding())
              .statusCode();
      if (status >= SERVER_ERROR) {
        return Finding.warn(WHAT, url + " answers with status " + status + ".");
      }
      return isPlain(url)
          ? Finding.warn(WHAT, url + " answers from here; " + PLAIN)
          : Finding.ok(WHAT, url + " answers from here.");
    } catch (IOException e) {
      String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      return Finding.warn(
          WHAT,
          url + " does not answer from here (" + why + "); it need not, but members need it.");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Finding.warn(WHAT, "It was not looked at.");
    }
  }
}
