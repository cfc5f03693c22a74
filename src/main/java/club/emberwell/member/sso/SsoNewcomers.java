package club.emberwell.member.sso;

import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.Secrets;
import club.emberwell.member.door.Invitations;
import club.emberwell.member.session.SignInProvider;
import club.emberwell.member.sso.SsoRepository.Arrival;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Locale;
import java.util.Optional;

/** Remembers whom the provider vouches for and the club does not know yet. */
@ApplicationScoped
class SsoNewcomers {
  private final SsoRepository rows;
  private final MemberRepository members;
  private final MemberChecks checks;
  private final SignInProvider config;

  SsoNewcomers(
      SsoRepository rows, MemberRepository members, MemberChecks checks, SignInProvider config) {
    this.rows = rows;
    this.members = members;
    this.checks = checks;
    this.config = config;
  }

  /** A secret for a cookie; the rest is kept here for some minutes. */
  String remember(IDTokenClaimsSet claims, String invitation) {
    String secret = Secrets.random();
    Arrival arrival =
        new Arrival(
            claims.getIssuer().getValue(),
            claims.getSubject().getValue(),
            email(claims),
            suggestion(claims),
            invitation == null ? null : Invitations.hash(invitation));
    QuarkusTransaction.requiringNew()
        .run(() -> rows.add(Secrets.sha256(secret), arrival, config.patience()));
    return secret;
  }

  @Transactional
  Optional<SingleSignOn.Suggestion> suggestion(String secret) {
    return rows.find(Secrets.sha256(secret))
        .map(
            a ->
                new SingleSignOn.Suggestion(
                    members.byHandle(a.suggestion()).isPresent() ? "" : a.suggestion(),
                    a.invitation() != null));
  }

  /** The address, where the provider has proved it and it could be one here. */
  private String email(IDTokenClaimsSet claims) {
    String email = claims.getStringClaim("email");
    boolean proved = Boolean.TRUE.equals(claims.getBooleanClaim("email_verified"));
    return proved && email != null && checks.address(email).isEmpty() ? email : null;
  }

  /** A name near what the person is called there; empty where nothing fits. */
  private String suggestion(IDTokenClaimsSet claims) {
    String name = claims.getStringClaim("preferred_username");
    if (name == null) {
      return "";
    }
    String handle =
        name.toLowerCase(Locale.ROOT).replaceAll("@.*", "").replaceAll("[^a-z0-9_-]+", "-");
    return checks.newMember(handle, null).isEmpty() ? handle : "";
  }

  /** Removes what is over. */
  @Scheduled(every = "1h", delayed = "6m")
  @Transactional
  void sweep() {
    rows.sweep();
  }
}
