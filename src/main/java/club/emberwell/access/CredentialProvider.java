package club.emberwell.access;

import club.emberwell.member.Role;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.Holder;
import club.emberwell.member.session.Tokens;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Looks up in the database whose secret it is. */
@ApplicationScoped
class CredentialProvider implements IdentityProvider<Credential> {
  static final String HOLDER = "emberwell.holder";

  private final Sessions sessions;
  private final Tokens tokens;

  CredentialProvider(Sessions sessions, Tokens tokens) {
    this.sessions = sessions;
    this.tokens = tokens;
  }

  @Override
  public Class<Credential> getRequestType() {
    return Credential.class;
  }

  @Override
  public Uni<SecurityIdentity> authenticate(
      Credential credential, AuthenticationRequestContext context) {
    return context.runBlocking(() -> identity(credential));
  }

  private SecurityIdentity identity(Credential credential) {
    Optional<Holder> found =
        switch (credential.kind()) {
          case SESSION -> sessions.find(credential.secret());
          case TOKEN -> tokens.find(credential.secret(), credential.network());
        };
    Holder holder = found.orElseThrow(AuthenticationFailedException::new);
    return QuarkusSecurityIdentity.builder()
        .setPrincipal(new QuarkusPrincipal(holder.member().handle()))
        .addRoles(upTo(holder.member().role()))
        .addAttribute(HOLDER, holder)
        .build();
  }

  /** The names of a role and of all it includes. */
  static Set<String> upTo(Role role) {
    return Arrays.stream(Role.values())
        .filter(role::atLeast)
        .map(r -> r.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.toSet());
  }
}
