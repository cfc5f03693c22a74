package club.emberwell.access;

import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.SecurityIdentityAugmentor;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import org.jboss.logging.Logger;

/**
 * Makes a stranger a reader where the club reads in public, so that one annotation guards reading.
 */
@ApplicationScoped
class StrangersRead implements SecurityIdentityAugmentor {
  private static final Logger LOG = Logger.getLogger(StrangersRead.class);

  private final ClubOptions club;

  StrangersRead(ClubOptions club) {
    this.club = club;
  }

  @Override
  public Uni<SecurityIdentity> augment(
      SecurityIdentity identity, AuthenticationRequestContext context) {
    if (!identity.isAnonymous()) {
      return Uni.createFrom().item(identity);
    }
    return club.fresh()
        ? Uni.createFrom().item(reader(identity))
        : context.runBlocking(() -> reader(identity));
  }

  private SecurityIdentity reader(SecurityIdentity stranger) {
    try {
      return club.readingPublic()
          ? QuarkusSecurityIdentity.builder(stranger).addRole(Role.READ).build()
          : stranger;
    } catch (RuntimeException e) {
      LOG.warn("the club's settings cannot be read; strangers see nothing meanwhile", e);
      return stranger;
    }
  }
}
