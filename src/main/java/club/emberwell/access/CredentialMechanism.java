package club.emberwell.access;

import club.emberwell.member.session.Sessions.Holder;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.Set;

/**
 * Reads who asks: programs bring a token and nothing else counts, browsers bring the cookie and
 * nothing else counts. So a foreign page cannot make a browser call the API.
 *
 * <p>Quarkus' own form authentication keeps the login in the cookie, where neither sign-out nor a
 * ban can end it; hence sessions in the database.
 */
@ApplicationScoped
class CredentialMechanism implements HttpAuthenticationMechanism {
  private static final String REFUSED = "emberwell.credential.refused";
  private static final String FAILURE = "emberwell.credential.failure";
  private static final String BEARER = "Bearer ";
  private static final int SECRET_MAX = 200;

  private final SessionCookie cookie;
  private final TrustedProxies proxies;

  CredentialMechanism(SessionCookie cookie, TrustedProxies proxies) {
    this.cookie = cookie;
    this.proxies = proxies;
  }

  /** Whether the request brought a credential that is worth nothing (any more). */
  static boolean refused(RoutingContext request) {
    return request.get(REFUSED) != null;
  }

  /** What kept the credential from being looked up; null where nothing did. */
  static Throwable failure(RoutingContext request) {
    return request.get(FAILURE);
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      RoutingContext request, IdentityProviderManager identities) {
    boolean operators = ApiPaths.isForOperators(request);
    if (ApiPaths.isAsset(request) && !operators) {
      return Uni.createFrom().nullItem();
    }
    String header = request.request().getHeader(HttpHeaders.AUTHORIZATION);
    boolean api = ApiPaths.isApi(request) || operators && header != null;
    Optional<Credential> credential = api ? bearer(request, header) : session(request);
    if (credential.isEmpty()) {
      if (api && header != null) {
        request.put(REFUSED, true);
      }
      return Uni.createFrom().nullItem();
    }
    return identities
        .authenticate(credential.get())
        .invoke(found -> renew(request, found))
        .onFailure(AuthenticationFailedException.class)
        .recoverWithItem(
            () -> {
              request.put(REFUSED, true);
              return null;
            })
        .onFailure()
        .recoverWithItem(
            e -> {
              request.put(FAILURE, e);
              return null;
            });
  }

  /** Hands the browser its next secret, where there is one. */
  private void renew(RoutingContext request, SecurityIdentity found) {
    Holder holder = found.getAttribute(CredentialProvider.HOLDER);
    if (holder.renewed() != null) {
      cookie.set(request, holder.renewed());
    }
  }

  private Optional<Credential> bearer(RoutingContext request, String header) {
    return Optional.ofNullable(header)
        .filter(h -> h.regionMatches(true, 0, BEARER, 0, BEARER.length()))
        .map(h -> h.substring(BEARER.length()).strip())
        .filter(token -> token.length() <= SECRET_MAX)
        .map(token -> new Credential(Credential.Kind.TOKEN, token, network(request)));
  }

  private Optional<Credential> session(RoutingContext request) {
    return cookie
        .read(request)
        .filter(secret -> secret.length() <= SECRET_MAX)
        .map(secret -> new Credential(Credential.Kind.SESSION, secret, network(request)));
  }

  private String network(RoutingContext request) {
    return ClientAddress.prefix(proxies.sender(request.request()));
  }

  @Override
  public Uni<ChallengeData> getChallenge(RoutingContext request) {
    return Uni.createFrom()
        .item(new ChallengeData(401, "WWW-Authenticate", "Bearer realm=\"emberwell\""));
  }

  @Override
  public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
    return Set.of(Credential.class);
  }
}
