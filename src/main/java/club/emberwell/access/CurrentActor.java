package club.emberwell.access;

import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.member.Scope;
import club.emberwell.member.session.Sessions.Holder;
import club.emberwell.quantity.UnitPreferences;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Who sent the present request. */
@RequestScoped
public class CurrentActor {
  private static final Actor STRANGER = new Actor(null, "", Role.READER, UnitPreferences.metric());

  private static final Set<Scope> ALL = Set.of(Scope.values());

  private final SecurityIdentity identity;

  CurrentActor(SecurityIdentity identity) {
    this.identity = identity;
  }

  /** The member, or a stranger without id and name. */
  public Actor get() {
    return holder().map(h -> h.member().actor()).orElse(STRANGER);
  }

  /** The id of the session or token of this request; null for a stranger. */
  public UUID credential() {
    return holder().map(Holder::credential).orElse(null);
  }

  /**
   * What the credential of this request may be used for; a stranger's lack of one limits nothing.
   */
  Set<Scope> scopes() {
    return holder().map(Holder::scopes).orElse(ALL);
  }

  /** Whether the member has a higher role than this credential. */
  boolean lessened() {
    return holder().map(Holder::lessened).orElse(false);
  }

  private Optional<Holder> holder() {
    return Optional.ofNullable(identity.getAttribute(CredentialProvider.HOLDER));
  }
}
