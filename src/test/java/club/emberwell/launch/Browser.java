package club.emberwell.launch;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;

/** A browser without scripts that keeps its cookies, whichever node of a club it meets. */
final class Browser {
  private final HttpClient http =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          // cookies know no ports: two nodes on one machine are one site to it
          .cookieHandler(new CookieManager())
          .followRedirects(HttpClient.Redirect.NEVER)
          .build();

  HttpResponse<String> open(int port, String path) throws IOException, InterruptedException {
    return http.send(to(port, path).GET().build(), BodyHandlers.ofString());
  }

  /** Loads a page, fills in its form that is sent to an address, and sends it there. */
  HttpResponse<String> submit(int port, String page, String address, Map<String, String> typed)
      throws IOException, InterruptedException {
    Element form =
        Jsoup.parse(open(port, page).body()).select("form[action=" + address + "]").first();
    if (form == null) {
      throw new AssertionError(page + " has no form for " + address);
    }
    Map<String, String> fields = new HashMap<>();
    form.select("input[type=hidden]").forEach(each -> fields.put(each.attr("name"), each.val()));
    fields.putAll(typed);
    String body =
        fields.entrySet().stream()
            .map(each -> encoded(each.getKey()) + "=" + encoded(each.getValue()))
            .collect(Collectors.joining("&"));
    HttpRequest request =
        to(port, address)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body))
            .build();
    return http.send(request, BodyHandlers.ofString());
  }

  private static HttpRequest.Builder to(int port, String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
        .timeout(Duration.ofSeconds(30));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
