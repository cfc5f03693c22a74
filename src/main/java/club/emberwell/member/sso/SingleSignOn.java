package club.emberwell.member.sso;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.session.IdentityLinkRepository;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.From;
import club.emberwell.member.session.Sessions.SignedIn;
import club.emberwell.member.session.SignInProvider;
import club.emberwell.member.sso.ProviderClient.ProviderFault;
import club.emberwell.member.sso.SsoTrip.Ticket;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.Unproven;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URI;
import java.time.Instant;
import java.util.Date;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jboss.logging.Logger;

/** Signing in by the word of the club's OpenID Connect provider. */
@ApplicationScoped
public class SingleSignOn {
  private static final Logger LOG = Logger.getLogger(SingleSignOn.class);
  private static final String ENTITY = "member";
  private static final int SUBJECT_LENGTH = 255;
  private static final String AWAY = "The sign-in provider does not answer. Try again later.";
  private static final String BROKEN = "This sign-in took too long or was used before. Try again.";

  private final SignInProvider config;
  private final ProviderClient provider;
  private final SsoTrip trips;
  private final SsoNewcomers newcomers;
  private final IdentityLinkRepository identities;
  private final Sessions sessions;
  private final Audit audit;

  SingleSignOn(
      SignInProvider config,
      ProviderClient provider,
      SsoTrip trips,
      SsoNewcomers newcomers,
      IdentityLinkRepository identities,
      Sessions sessions,
      Audit audit) {
    this.config = config;
    this.provider = provider;
    this.trips = trips;
    this.newcomers = newcomers;
    this.identities = identities;
    this.sessions = sessions;
    this.audit = audit;
  }

  /**
   * The beginning of a trip.
   *
   * @param at where to send the browser
   * @param cookie what it must bring back
   */
  public record Start(URI at, String cookie) {}

  /** How a trip ended. */
  public sealed interface End {
    /** Known here: signed in. */
    record Known(SignedIn session, String to) implements End {}

    /** The account at the provider now belongs to the member who began the trip. */
    record Linked(String to) implements End {}

    /** The member who began the trip has just proved at the provider who they are. */
    record Confirmed() implements End {}

    /**
     * Not known here yet: has to choose a name.
     *
     * @param secret for a cookie; the rest is kept here for some minutes
     */
    record Newcomer(String secret) implements End {}
  }

  /** What a newcomer can be offered. */
  public record Suggestion(String handle, boolean invited) {}

  /** Whether the club has a provider. */
  public boolean available() {
    return config.issuer().filter(issuer -> !issuer.isBlank()).isPresent();
  }

  /**
   * Begins a trip to the provider.
   *
   * @param linking who wants to link the account at the provider; or null
   * @param to a path of this server
   * @param invitation a code that was followed; or null
   */
  public Start begin(UUID linking, String to, String invitation) {
    return begin(trips.fresh(to, invitation, linking, false));
  }

  /** Begins a trip by which a member confirms who they are, whatever the provider remembers. */
  public Start confirm(Actor actor) {
    return begin(trips.fresh("/", null, actor.memberId(), true));
  }

  private Start begin(Ticket ticket) {
    try {
      URI at =
          provider.signInAt(ticket.state(), ticket.nonce(), ticket.verifier(), ticket.confirms());
      return new Start(at, trips.signed(ticket));
    } catch (ProviderFault e) {
      LOG.warnf("single sign-on: %s", e.getMessage());
      throw new EntryForbidden(EntryForbidden.Why.CLUB, AWAY);
    }
  }

  /**
   * Ends a trip.
   *
   * @param actor who is signed in now
   * @param cookie what {@link #begin} handed out
   * @param issuer who says it has answered (RFC 9207); or null
   * @param from what a session will be known by
   */
  public End finish(
      Actor actor, String cookie, String state, String code, String issuer, From from) {
    boolean stranger = issuer != null && !issuer.equals(config.issuer().orElse(null));
    Optional<Ticket> ticket = stranger ? Optional.empty() : trips.back(cookie, state);
    if (ticket.isEmpty()) {
      throw new Unproven(BROKEN);
    }
    if (code == null || code.isBlank()) {
      throw new Unproven("The provider refused the sign-in.");
    }
    try {
      IDTokenClaimsSet claims =
          provider.redeem(code, ticket.get().nonce(), ticket.get().verifier());
      if (claims.getSubject().getValue().length() > SUBJECT_LENGTH) {
        throw new Unproven(AWAY);
      }
      return arrived(actor, ticket.get(), claims, from);
    } catch (ProviderFault e) {
      LOG.warnf("single sign-on: %s", e.getMessage());
      throw new Unproven(AWAY);
    }
  }

  private End arrived(Actor actor, Ticket ticket, IDTokenClaimsSet claims, From from) {
    String issuer = claims.getIssuer().getValue();
    String subject = claims.getSubject().getValue();
    if (ticket.member() != null) {
      if (!actor.is(ticket.member())) {
        throw new Unproven(BROKEN);
      }
      return ticket.confirms()
          ? confirmed(actor, claims)
          : link(actor, issuer, subject, ticket.to());
    }
    Optional<UUID> known =
        QuarkusTransaction.requiringNew().call(() -> identities.member(issuer, subject));
    if (known.isPresent()) {
      return new End.Known(sessions.start(known.get(), from), ticket.to());
    }
    return new End.Newcomer(newcomers.remember(claims, ticket.invitation()));
  }

  /** OpenID Connect Core 1.0, 3.1.2.1: asked for max_age, a provider says when it was. */
  private End confirmed(Actor actor, IDTokenClaimsSet claims) {
    Date at = claims.getAuthenticationTime();
    Instant since = Instant.now().minus(config.patience()).minus(config.clockSkew());
    boolean theirs =
        QuarkusTransaction.requiringNew()
            .call(
                () ->
                    identities
                        .member(claims.getIssuer().getValue(), claims.getSubject().getValue())
                        .filter(actor::is)
                        .isPresent());
    if (at == null || at.toInstant().isBefore(since) || !theirs) {
      throw new Unproven("The provider did not confirm that it is you. Sign in there once more.");
    }
    return new End.Confirmed();
  }

  private End link(Actor actor, String issuer, String subject, String to) {
    return QuarkusTransaction.requiringNew()
        .call(
            () -> {
              Optional<UUID> owner = identities.member(issuer, subject);
              if (owner.filter(o -> !actor.is(o)).isPresent()) {
                throw new EntryForbidden(
                    EntryForbidden.Why.STATE, "Another member already signs in with this account.");
              }
              if (owner.isEmpty()) {
                identities.add(issuer, subject, actor.memberId());
                String id = actor.memberId().toString();
                audit.record(actor, "link-sign-in", ENTITY, id, "", Map.of());
              }
              return new End.Linked(to);
            });
  }

  /** What is known of the newcomer behind a secret; empty when it took too long. */
  public Optional<Suggestion> newcomer(String secret) {
    return newcomers.suggestion(secret);
  }
}
