package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The samples for proxies, run as they are but for ports, names and certificates: Debian's nginx
 * and Caddy in front of the packaged program.
 */
@Tag("packaged")
@Tag("slow")
class ProxySamplesTest {
  private static int outside;
  private static int plain;
  private static Path folder;
  private static PackagedProgram program;
  private Process proxy;

  @BeforeAll
  static void startTheServer() throws Exception {
    outside = PackagedProgram.freePort();
    plain = PackagedProgram.freePort();
    folder = Files.createTempDirectory("emberwell-proxy-");
    Path home = Files.createDirectory(folder.resolve("home"));
    for (Path each : List.of(folder, home)) {
      Files.setPosixFilePermissions(each, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
    program =
        PackagedProgram.start(
            home,
            Map.of(
                "EMBERWELL_PUBLIC_URL", "https://localhost:" + outside,
                "EMBERWELL_TRUSTED_PROXIES", "127.0.0.1",
                "EMBERWELL_FIRST_DOOR", "open",
                "EMBERWELL_FIRST_READING_PUBLIC", "true"));
    program.awaitReadiness(200);
  }

  @AfterAll
  static void stopTheServer() throws Exception {
    program.process.destroy();
    program.awaitEnd();
    PostgresBinaries.deleteTree(folder);
  }

  @AfterEach
  void stopTheProxy() throws Exception {
    if (proxy != null) {
      proxy.destroy();
      proxy.waitFor();
    }
  }

  @Test
  void nginx() throws Exception {
    Path key = folder.resolve("key.pem");
    Path certificate = folder.resolve("certificate.pem");
    String request = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes";
    run(request + " -keyout " + key + " -out " + certificate + " -subj /CN=localhost -days 2");
    String sample =
        Files.readString(Path.of("deploy/proxy/nginx.conf"))
            .replace("127.0.0.1:8080", "127.0.0.1:" + program.port)
            .replace("listen 80;", "listen 127.0.0.1:" + plain + ";")
            .replace("listen 443 ", "listen 127.0.0.1:" + outside + " ")
            .replace("server_name settings.club.example", "server_name localhost")
            .replaceAll("/etc/ssl/.*/fullchain.pem", certificate.toString())
            .replaceAll("/etc/ssl/.*/privkey.pem", key.toString());
    Path main = folder.resolve("nginx.conf");
    Files.writeString(
        main,
        """
        daemon off;
        pid %1$s/nginx.pid;
        error_log stderr warn;
        events {}
        http {
          access_log off;
          client_body_temp_path %1$s/bodies;
          proxy_temp_path %1$s/answers;
          fastcgi_temp_path %1$s/unused1;
          uwsgi_temp_path %1$s/unused2;
          scgi_temp_path %1$s/unused3;
          %2$s
        }
        """
            .formatted(folder, sample));
    proxy = start(Map.of(), "nginx", "-c", main.toString(), "-e", "stderr");
    holds();
  }

  @Test
  void caddy() throws Exception {
    Path main = folder.resolve("Caddyfile");
    String own =
        """
        {
          admin off
          local_certs
          skip_install_trust
          auto_https disable_redirects
        }
        """;
    Files.writeString(main, own + Files.readString(Path.of("deploy/proxy/Caddyfile")));
    proxy =
        start(
            Map.of(
                "EMBERWELL_SITE",
                "https://localhost:" + outside,
                "EMBERWELL_PLAIN",
                "http://localhost:" + plain,
                "EMBERWELL_NODES",
                "127.0.0.1:" + program.port,
                "XDG_DATA_HOME",
                folder.resolve("caddy").toString(),
                "XDG_CONFIG_HOME",
                folder.resolve("caddy").toString()),
            "caddy",
            "run",
            "--adapter",
            "caddyfile",
            "--config",
            main.toString());
    holds();
  }

  /** What an operator may expect of either. */
  private void holds() throws Exception {
    await()
        .atMost(Duration.ofSeconds(30))
        .failFast("the proxy has ended", () -> !proxy.isAlive())
        .ignoreExceptions()
        // the front page of a new club leads to its first owner
        .until(() -> status("/about") == 200);
    HttpResponse<String> page = send(to("/about"));
    for (HttpResponse<String> each : List.of(page, send(to("/q/metrics")), send(to("/none")))) {
      // RFC 6797, 7.1: no more than one
      assertEquals(
          List.of("max-age=31536000"), each.headers().allValues("Strict-Transport-Security"));
    }
    assertTrue(page.headers().firstValue("Content-Security-Policy").isPresent());
    assertEquals(404, status("/q/health/ready"));
    assertEquals(404, status("/q/metrics"));

    // OWASP ASVS 5.0, V4.1.2: people are led on, programs told at once
    assertEquals(308, inClear("/reports?q=slate").statusCode());
    assertEquals(
        "https://localhost/reports?q=slate",
        inClear("/reports?q=slate").headers().firstValue("Location").orElseThrow());
    assertEquals(403, inClear("/api/v1/reports").statusCode());

    String handle = "proxied" + Long.toString(System.nanoTime(), Character.MAX_RADIX);
    String newcomer = "{\"handle\": \"%s\", \"password\": \"a long enough password\"}";
    HttpResponse<String> joined =
        send(
            to("/api/v1/members")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(newcomer.formatted(handle))));
    assertEquals(201, joined.statusCode(), joined.body());
    String location = joined.headers().firstValue("Location").orElseThrow();
    assertTrue(location.startsWith("https://localhost:" + outside + "/"), location);

    HttpRequest.Builder large =
        to("/api/v1/members")
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofByteArray(new byte[40 << 20]));
    // who still sends while the line is closed may miss the answer
    await()
        .atMost(Duration.ofMinutes(1))
        .ignoreExceptionsInstanceOf(IOException.class)
        .until(() -> send(large).statusCode() == 413);
  }

  private static int status(String path) throws Exception {
    return send(to(path)).statusCode();
  }

  private static HttpResponse<String> inClear(String path) throws Exception {
    return send(HttpRequest.newBuilder(URI.create("http://localhost:" + plain + path)));
  }

  private static HttpRequest.Builder to(String path) {
    return HttpRequest.newBuilder(URI.create("https://localhost:" + outside + path))
        .timeout(Duration.ofSeconds(20));
  }

  private static HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
    return client().send(request.build(), BodyHandlers.ofString());
  }

  /** It believes any certificate: this is not about them. */
  private static HttpClient client() throws Exception {
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, new TrustManager[] {new Credulous()}, null);
    return HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).sslContext(context).build();
  }

  private static final class Credulous extends X509ExtendedTrustManager {
    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

    @Override
    public X509Certificate[] getAcceptedIssuers() {
      return new X509Certificate[0];
    }
  }

  private static Process start(Map<String, String> environment, String... line) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(line)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(line[0] + ".log").toFile());
    builder.environment().putAll(environment);
    return builder.start();
  }

  private static void run(String line) throws Exception {
    assertEquals(0, start(Map.of(), line.split(" ")).waitFor(), line);
  }
}
