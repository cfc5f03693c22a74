package club.emberwell.member.sso;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import org.hibernate.Session;

/** What single sign-on must remember for some minutes. */
@ApplicationScoped
class SsoRepository {
  /**
   * Somebody the provider knows and the club does not yet.
   *
   * @param email null where the provider vouches for none
   * @param invitation what the code of an invitation hashes to that was followed before; or null
   */
  record Arrival(
      String issuer, String subject, String email, String suggestion, byte[] invitation) {}

  private final Session db;

  SsoRepository(Session db) {
    this.db = db;
  }

  /** Uses a state up; false when it was used before, on whatever node. */
  boolean spend(byte[] state, Duration life) {
    return db.createNativeMutationQuery(
                """
                insert into sso_state (state_hash, expires_at)
                values (:state, now() + make_interval(secs => :life))
                on conflict do nothing
                """)
            .setParameter("state", state)
            .setParameter("life", (double) life.toSeconds())
            .executeUpdate()
        == 1;
  }

  void add(byte[] secret, Arrival arrival, Duration life) {
    db.createNativeMutationQuery(
            """
            insert into sso_arrival
              (secret_hash, issuer, subject, email, suggestion, invitation_hash, expires_at)
            values (:secret, :issuer, :subject, cast(:email as text), :suggestion,
                    cast(:invitation as bytea), now() + make_interval(secs => :life))
            """)
        .setParameter("secret", secret)
        .setParameter("issuer", arrival.issuer())
        .setParameter("subject", arrival.subject())
        .setParameter("email", arrival.email(), String.class)
        .setParameter("suggestion", arrival.suggestion())
        .setParameter("invitation", arrival.invitation(), byte[].class)
        .setParameter("life", (double) life.toSeconds())
        .executeUpdate();
  }

  Optional<Arrival> find(byte[] secret) {
    return db.createNativeQuery(
            """
            select issuer, subject, email, suggestion, invitation_hash
              from sso_arrival where secret_hash = :secret and expires_at > now()
            """,
            Arrival.class)
        .setParameter("secret", secret)
        .uniqueResultOptional();
  }

  void forget(byte[] secret) {
    db.createNativeMutationQuery(
            """
            delete from sso_arrival where secret_hash = :secret
            """)
        .setParameter("secret", secret)
        .executeUpdate();
  }

  void sweep() {
    db.createNativeMutationQuery(
            """
            with states as (delete from sso_state where expires_at < now())
            delete from sso_arrival where expires_at < now()
            """)
        .executeUpdate();
  }
}
