package club.emberwell.web.account;

import static io.restassured.RestAssured.given;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.Base64;
import java.util.Date;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/**
 * A real OpenID Connect provider beside the tests: discovery, keys, authorisation and token
 * endpoints, after OpenID Connect Core 1.0 and Discovery 1.0. It checks what a provider has to
 * check (client, redirect, code once, PKCE) and can be told to answer wrongly.
 */
public class OwnProvider implements QuarkusTestResourceLifecycleManager {
  private static final String CLIENT = "club-server";
  private static final String SECRET = "ash bark tea";

  private record Grant(String nonce, String challenge, String redirect) {}

  private final Map<String, Grant> codes = new ConcurrentHashMap<>();
  private HttpServer server;
  private RSAKey key;
  private RSAKey signingKey;
  private JWTClaimsSet person = new JWTClaimsSet.Builder().build();
  private UnaryOperator<JWTClaimsSet.Builder> twist = UnaryOperator.identity();

  @Override
  public Map<String, String> start() {
    try {
      key = new RSAKeyGenerator(2048).keyID("k1").generate();
      signingKey = key;
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
      server.createContext("/.well-known/openid-configuration", this::discovery);
      server.createContext("/keys", e -> json(e, 200, new JWKSet(key.toPublicJWK()).toString()));
      server.createContext("/authorize", this::authorize);
      server.createContext("/token", this::token);
      server.start();
    } catch (IOException | JOSEException e) {
      throw new IllegalStateException(e);
    }
    return Map.of(
        "emberwell.sso.issuer",
        issuer(),
        "emberwell.sso.client-id",
        CLIENT,
        "emberwell.sso.client-secret",
        SECRET,
        "emberwell.sso.label",
        "The Guild",
        "emberwell.first.door",
        "open");
  }

  @Override
  public void inject(TestInjector injector) {
    injector.injectIntoFields(
        this, field -> field.getType().getName().equals(getClass().getName()));
  }

  @Override
  public void stop() {
    server.stop(0);
  }

  String issuer() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  /** Who signs in at the provider from now on. */
  public void isUsedBy(String subject, String name, String email, boolean verified) {
    twist = UnaryOperator.identity();
    signingKey = key;
    person =
        new JWTClaimsSet.Builder()
            .subject(subject)
            .claim("preferred_username", name)
            .claim("email", email)
            .claim("email_verified", verified)
            .build();
  }

  /** Answers wrongly from now on. */
  void twist(UnaryOperator<JWTClaimsSet.Builder> how) {
    twist = how;
  }

  /** Signs by a key nobody knows from now on. */
  void signByAStrangersKey() throws JOSEException {
    signingKey = new RSAKeyGenerator(2048).keyID("k1").generate();
  }

  private void discovery(HttpExchange exchange) throws IOException {
    json(
        exchange,
        200,
        """
        {"issuer": "%1$s", "authorization_endpoint": "%1$s/authorize",
         "token_endpoint": "%1$s/token", "jwks_uri": "%1$s/keys",
         "response_types_supported": ["code"], "subject_types_supported": ["public"],
         "id_token_signing_alg_values_supported": ["RS256"],
         "code_challenge_methods_supported": ["S256"]}
        """
            .formatted(issuer()));
  }

  private void authorize(HttpExchange exchange) throws IOException {
    Map<String, String> asked = parameters(exchange.getRequestURI().getRawQuery());
    boolean right =
        CLIENT.equals(asked.get("client_id"))
            && "code".equals(asked.get("response_type"))
            && "S256".equals(asked.get("code_challenge_method"))
            && asked.get("scope").contains("openid")
            && asked.get("redirect_uri").endsWith("/sign-in/sso/back");
    if (!right) {
      json(exchange, 400, "{\"error\": \"invalid_request\"}");
      return;
    }
    String code = UUID.randomUUID().toString();
    codes.put(
        code,
        new Grant(asked.get("nonce"), asked.get("code_challenge"), asked.get("redirect_uri")));
    String back =
        asked.get("redirect_uri")
            + "?code="
            + code
            + "&iss="
            + URLEncoder.encode(issuer(), StandardCharsets.UTF_8)
            + "&state="
            + asked.get("state");
    exchange.getResponseHeaders().set("Location", back);
    exchange.sendResponseHeaders(302, -1);
    exchange.close();
  }

  private void token(HttpExchange exchange) throws IOException {
    Map<String, String> asked =
        parameters(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.US_ASCII));
    Grant grant = codes.remove(asked.getOrDefault("code", ""));
    String basic = exchange.getRequestHeaders().getFirst("Authorization");
    boolean right =
        grant != null
            && basic != null
            && secretIn(basic).equals(SECRET)
            && "authorization_code".equals(asked.get("grant_type"))
            && grant.redirect().equals(asked.get("redirect_uri"))
            && grant.challenge().equals(challenge(asked.getOrDefault("code_verifier", "")));
    if (!right) {
      json(exchange, 400, "{\"error\": \"invalid_grant\"}");
      return;
    }
    json(
        exchange,
        200,
        "{\"access_token\": \"a\", \"token_type\": \"Bearer\", \"id_token\": \"%s\"}"
            .formatted(idToken(grant.nonce())));
  }

  private String idToken(String nonce) {
    JWTClaimsSet.Builder claims =
        new JWTClaimsSet.Builder(person)
            .issuer(issuer())
            .audience(CLIENT)
            .issueTime(Date.from(Instant.now()))
            .expirationTime(Date.from(Instant.now().plusSeconds(300)))
            .claim("nonce", nonce);
    try {
      SignedJWT jwt =
          new SignedJWT(
              new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("k1").build(),
              twist.apply(claims).build());
      jwt.sign(new RSASSASigner(signingKey));
      return jwt.serialize();
    } catch (JOSEException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String secretIn(String basic) {
    String decoded =
        new String(
            Base64.getDecoder().decode(basic.substring("Basic ".length())), StandardCharsets.UTF_8);
    return URLDecoder.decode(decoded.substring(decoded.indexOf(':') + 1), StandardCharsets.UTF_8);
  }

  private static String challenge(String verifier) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(verifier.getBytes(StandardCharsets.US_ASCII));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, String> parameters(String encoded) {
    Map<String, String> parameters = new HashMap<>();
    for (String pair : encoded.split("&")) {
      String[] parts = pair.split("=", 2);
      parameters.put(parts[0], URLDecoder.decode(parts[1], StandardCharsets.UTF_8));
    }
    return parameters;
  }

  private static void json(HttpExchange exchange, int status, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", "application/json");
    exchange.sendResponseHeaders(status, bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }

  /** What the provider answers a browser that came: the path and query it sends it back to. */
  static String back(String url) {
    String back =
        given()
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false)
            .get(url)
            .then()
            .statusCode(302)
            .extract()
            .header("Location");
    return back.replaceFirst("^https?://[^/]+", "");
  }
}
