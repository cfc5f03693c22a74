package club.emberwell.member.pace;

import club.emberwell.member.Secrets;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Optional;
import org.hibernate.Session;

/**
 * Counts tries per subject in the database, so that all nodes share the count. Past the free tries
 * each one waits twice as long as the one before, up to a cap; nobody is locked out for good.
 */
@ApplicationScoped
class AttemptRepository {
  private final Session db;

  AttemptRepository(Session db) {
    this.db = db;
  }

  /**
   * Counts one try; answers the wait if it is refused. One statement counts and decides, so that
   * parallel tries cannot slip past each other: inside the wait no row is changed and none comes
   * back.
   */
  @Transactional(TxType.REQUIRES_NEW)
  Optional<Duration> claim(String kind, String subject, Pace pace) {
    String key = hashed(subject);
    boolean counted =
        !db.createNativeQuery(
                """
                insert into attempt as a (kind, subject, last_at, count)
                values (:kind, :subject, clock_timestamp(), 1)
                on conflict (kind, subject) do update set
                  count = case
                    when a.last_at < clock_timestamp() - make_interval(secs => :window) then 1
                    else a.count + 1 end,
                  last_at = clock_timestamp()
                where a.count < :free
                   or a.last_at + make_interval(secs => least(cast(:longest as double precision),
                        :first * power(2, least(a.count - :free, 40)))) <= clock_timestamp()
                returning count
                """,
                Integer.class)
            .setParameter("kind", kind)
            .setParameter("subject", key)
            .setParameter("window", seconds(pace.window()))
            .setParameter("free", pace.free())
            .setParameter("first", seconds(pace.first()))
            .setParameter("longest", seconds(pace.longest()))
            .getResultList()
            .isEmpty();
    return counted ? Optional.empty() : Optional.of(remaining(kind, key, pace));
  }

  @Transactional(TxType.REQUIRES_NEW)
  void forget(String kind, String subject) {
    db.createNativeMutationQuery(
            """
            delete from attempt where kind = :kind and subject = :subject
            """)
        .setParameter("kind", kind)
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  void forgetSubject(String subject) {
    db.createNativeMutationQuery(
            """
            delete from attempt where subject = :subject
            """)
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  @Transactional(TxType.REQUIRES_NEW)
  void giveBack(String kind, String subject) {
    db.createNativeMutationQuery(
            """
            update attempt set count = greatest(count - 1, 0)
             where kind = :kind and subject = :subject
            """)
        .setParameter("kind", kind)
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  /** Drops counts nobody has added to for a day. */
  void sweep() {
    db.createNativeMutationQuery(
            """
            delete from attempt where last_at < now() - interval '1 day'
            """)
        .executeUpdate();
  }

  private Duration remaining(String kind, String key, Pace pace) {
    double left =
        db.createNativeQuery(
                """
                select cast(extract(epoch from a.last_at + make_interval(secs =>
                         least(cast(:longest as double precision),
                           :first * power(2, least(a.count - :free, 40))))
                         - clock_timestamp()) as double precision)
                  from attempt a where a.kind = :kind and a.subject = :subject
                """,
                Double.class)
            .setParameter("kind", kind)
            .setParameter("subject", key)
            .setParameter("free", pace.free())
            .setParameter("first", seconds(pace.first()))
            .setParameter("longest", seconds(pace.longest()))
            .getSingleResult();
    return Duration.ofSeconds(Math.max(1, (long) Math.ceil(left)));
  }

  private static double seconds(Duration duration) {
    return duration.toMillis() / 1000.0;
  }

  private static String hashed(String subject) {
    return HexFormat.of().formatHex(Secrets.sha256(subject));
  }
}
