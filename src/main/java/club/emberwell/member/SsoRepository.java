package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** What single sign-on must remember for some minutes. */
@ApplicationScoped
class SsoRepository {
  /**
   * Somebody the provider knows and the club does not yet.
   *
   * @param email null where the provider vouches for none
   * @param invitation a code that was followed before; or null
   */
  record Arrival(
      String issuer, String subject, String email, String suggestion, String invitation) {}

  private final EntityManager db;

  SsoRepository(EntityManager db) {
    this.db = db;
  }

  /** Uses a state up; false when it was used before, on whatever node. */
  boolean spend(byte[] state, Duration life) {
    return db.createNativeQuery(
                "insert into sso_state (state_hash, expires_at)"
                    + " values (:state, now() + make_interval(secs => :life))"
                    + " on conflict do nothing")
            .setParameter("state", state)
            .setParameter("life", (double) life.toSeconds())
            .executeUpdate()
        == 1;
  }

  void add(byte[] secret, Arrival arrival, Duration life) {
    db.createNativeQuery(
            "insert into sso_arrival (secret_hash, issuer, subject, email, suggestion, invitation,"
                + " expires_at) values (:secret, :issuer, :subject, cast(:email as text),"
                + " :suggestion, cast(:invitation as text),"
                + " now() + make_interval(secs => :life))")
        .setParameter("secret", secret)
        .setParameter("issuer", arrival.issuer())
        .setParameter("subject", arrival.subject())
        .setParameter("email", arrival.email())
        .setParameter("suggestion", arrival.suggestion())
        .setParameter("invitation", arrival.invitation())
        .setParameter("life", (double) life.toSeconds())
        .executeUpdate();
  }

  Optional<Arrival> find(byte[] secret) {
    List<?> rows =
        db.createNativeQuery(
                "select issuer, subject, email, suggestion, invitation from sso_arrival"
                    + " where secret_hash = :secret and expires_at > now()",
                Tuple.class)
            .setParameter("secret", secret)
            .getResultList();
    return rows.stream()
        .map(Tuple.class::cast)
        .findFirst()
        .map(
            row ->
                new Arrival(
                    (String) row.get(0),
                    (String) row.get(1),
                    (String) row.get(2),
                    (String) row.get(3),
                    (String) row.get(4)));
  }

  void forget(byte[] secret) {
    db.createNativeQuery("delete from sso_arrival where secret_hash = :secret")
        .setParameter("secret", secret)
        .executeUpdate();
  }

  void sweep() {
    db.createNativeQuery("delete from sso_arrival where expires_at < now()").executeUpdate();
    db.createNativeQuery("delete from sso_state where expires_at < now()").executeUpdate();
  }
}
