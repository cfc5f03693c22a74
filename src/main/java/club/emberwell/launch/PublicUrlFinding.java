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

  private PublicUrlFinding() {}

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
      return status < SERVER_ERROR
          ? Finding.ok(WHAT, url + " answers from here.")
          : Finding.warn(WHAT, url + " answers with status " + status + ".");
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
