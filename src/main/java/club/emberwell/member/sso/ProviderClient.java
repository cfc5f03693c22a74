package club.emberwell.member.sso;

import club.emberwell.member.session.SignInProvider;
import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jose.util.DefaultResourceRetriever;
import com.nimbusds.oauth2.sdk.AuthorizationCode;
import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.GeneralException;
import com.nimbusds.oauth2.sdk.ParseException;
import com.nimbusds.oauth2.sdk.ResponseType;
import com.nimbusds.oauth2.sdk.Scope;
import com.nimbusds.oauth2.sdk.TokenRequest;
import com.nimbusds.oauth2.sdk.TokenResponse;
import com.nimbusds.oauth2.sdk.auth.ClientSecretBasic;
import com.nimbusds.oauth2.sdk.auth.Secret;
import com.nimbusds.oauth2.sdk.http.HTTPRequest;
import com.nimbusds.oauth2.sdk.id.ClientID;
import com.nimbusds.oauth2.sdk.id.Issuer;
import com.nimbusds.oauth2.sdk.id.State;
import com.nimbusds.oauth2.sdk.pkce.CodeChallengeMethod;
import com.nimbusds.oauth2.sdk.pkce.CodeVerifier;
import com.nimbusds.openid.connect.sdk.AuthenticationRequest;
import com.nimbusds.openid.connect.sdk.Nonce;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponse;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponseParser;
import com.nimbusds.openid.connect.sdk.Prompt;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import com.nimbusds.openid.connect.sdk.op.OIDCProviderMetadata;
import com.nimbusds.openid.connect.sdk.validators.IDTokenValidator;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.MalformedURLException;
import java.net.URI;
import java.net.URL;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Speaks with the club's OpenID Connect provider: it calls what the configured issuer's own
 * discovery document names and nothing else.
 *
 * <p>OpenID Connect Core 1.0 (code flow), Discovery 1.0, PKCE with S256 (RFC 7636).
 */
@ApplicationScoped
class ProviderClient {
  private static final Duration METADATA_LIFE = Duration.ofHours(1);
  private static final int KEYS_BYTES = 100_000;

  /** Signatures with the provider's own key; never a shared secret, never none. */
  private static final Set<JWSAlgorithm> SIGNATURES =
      Set.of(
          JWSAlgorithm.RS256,
          JWSAlgorithm.RS384,
          JWSAlgorithm.RS512,
          JWSAlgorithm.PS256,
          JWSAlgorithm.PS384,
          JWSAlgorithm.PS512,
          JWSAlgorithm.ES256,
          JWSAlgorithm.ES384,
          JWSAlgorithm.ES512);

  private final SignInProvider config;
  private final URI back;
  private volatile Known known;

  ProviderClient(
      SignInProvider config, @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.config = config;
    this.back = URI.create(publicUrl + "/sign-in/sso/back");
  }

  /** What discovery said, and the provider's keys as they come. */
  private record Known(
      OIDCProviderMetadata metadata, JWKSource<SecurityContext> keys, Instant until) {}

  /** Fetches the provider's keys from where its document says, and from nowhere that points to. */
  static final class KeysFetcher extends DefaultResourceRetriever {
    KeysFetcher(int millis) {
      super(millis, millis, KEYS_BYTES);
    }

    @Override
    protected HttpURLConnection openHTTPConnection(URL url) throws IOException {
      HttpURLConnection connection = super.openHTTPConnection(url);
      connection.setInstanceFollowRedirects(false);
      return connection;
    }
  }

  /** Something the provider said or failed to say. */
  static final class ProviderFault extends Exception {
    ProviderFault(String what, Throwable cause) {
      super(what, cause);
    }
  }

  /** Where to send the browser. */
  URI signInAt(String state, String nonce, String verifier, boolean anew) throws ProviderFault {
    AuthenticationRequest.Builder request =
        new AuthenticationRequest.Builder(
                ResponseType.CODE, new Scope("openid", "profile", "email"), client(), back)
            .endpointURI(known().metadata().getAuthorizationEndpointURI())
            .state(new State(state))
            .nonce(new Nonce(nonce))
            .codeChallenge(new CodeVerifier(verifier), CodeChallengeMethod.S256);
    if (anew) {
      request.prompt(Prompt.Type.LOGIN).maxAge(0);
    }
    return request.build().toURI();
  }

  /** Trades the code for what the provider vouches for, checked in every part. */
  IDTokenClaimsSet redeem(String code, String nonce, String verifier) throws ProviderFault {
    Known now = known();
    try {
      TokenResponse answer = OIDCTokenResponseParser.parse(request(now, code, verifier).send());
      if (!answer.indicatesSuccess()) {
        throw new ProviderFault("the code was not taken", null);
      }
      var idToken = ((OIDCTokenResponse) answer.toSuccessResponse()).getOIDCTokens().getIDToken();
      IDTokenValidator validator =
          new IDTokenValidator(
              now.metadata().getIssuer(),
              client(),
              new JWSVerificationKeySelector<>(SIGNATURES, now.keys()),
              null);
      validator.setMaxClockSkew((int) config.clockSkew().toSeconds());
      return validator.validate(idToken, new Nonce(nonce));
    } catch (IOException | ParseException | BadJOSEException | JOSEException e) {
      throw new ProviderFault("the token was not believed: " + e.getMessage(), e);
    }
  }

  private HTTPRequest request(Known now, String code, String verifier) {
    AuthorizationCodeGrant grant =
        new AuthorizationCodeGrant(new AuthorizationCode(code), back, new CodeVerifier(verifier));
    URI endpoint = now.metadata().getTokenEndpointURI();
    TokenRequest.Builder request =
        config
            .clientSecret()
            .filter(secret -> !secret.isBlank())
            .map(
                secret ->
                    new TokenRequest.Builder(
                        endpoint, new ClientSecretBasic(client(), new Secret(secret)), grant))
            .orElseGet(() -> new TokenRequest.Builder(endpoint, client(), grant));
    return limited(request.build().toHTTPRequest());
  }

  private HTTPRequest limited(HTTPRequest request) {
    request.setFollowRedirects(false);
    request.setConnectTimeout((int) config.timeout().toMillis());
    request.setReadTimeout((int) config.timeout().toMillis());
    return request;
  }

  private ClientID client() {
    return new ClientID(config.clientId());
  }

  private Known known() throws ProviderFault {
    Known now = known;
    if (now == null || now.until().isBefore(Instant.now())) {
      now = discover();
      known = now;
    }
    return now;
  }

  private Known discover() throws ProviderFault {
    Issuer issuer =
        new Issuer(
            config.issuer().orElseThrow(() -> new IllegalStateException("there is no provider")));
    try {
      // answers only where the document names this very issuer
      OIDCProviderMetadata metadata = OIDCProviderMetadata.resolve(issuer, this::limited);
      boolean plain = "http".equals(URI.create(issuer.getValue()).getScheme());
      requireSafe(metadata.getAuthorizationEndpointURI(), plain);
      requireSafe(metadata.getTokenEndpointURI(), plain);
      requireSafe(metadata.getJWKSetURI(), plain);
      int millis = (int) config.timeout().toMillis();
      JWKSource<SecurityContext> keys =
          JWKSourceBuilder.create(metadata.getJWKSetURI().toURL(), new KeysFetcher(millis))
              .retrying(true)
              .build();
      return new Known(metadata, keys, Instant.now().plus(METADATA_LIFE));
    } catch (GeneralException | IOException e) {
      throw new ProviderFault("discovery failed: " + e.getMessage(), e);
    }
  }

  /** TLS all the way; plain HTTP only for an issuer that was itself configured so. */
  private static void requireSafe(URI endpoint, boolean plain) throws MalformedURLException {
    boolean https = endpoint != null && "https".equals(endpoint.getScheme());
    if (!https && !(plain && endpoint != null && "http".equals(endpoint.getScheme()))) {
      throw new MalformedURLException("an endpoint is missing or not https");
    }
  }
}
