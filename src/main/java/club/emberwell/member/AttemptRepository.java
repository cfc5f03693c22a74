package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Counts tries per subject in the database, so that all nodes share the count. Past the free tries
 * each one waits twice as long as the one before, up to a cap; nobody is locked out for good.
 */
@ApplicationScoped
class AttemptRepository {
  /**
   * One statement counts the try and decides, so that parallel tries cannot slip past each other:
   * inside the wait no row is changed and none comes back.
   */
  private static final String CLAIM =
      """
      insert into attempt as a (kind, subject, window_start, last_at, count)
      values (:kind, :subject, clock_timestamp(), clock_timestamp(), 1)
      on conflict (kind, subject) do update set
        count = case when a.last_at < clock_timestamp() - make_interval(secs => :window) then 1
                     else a.count + 1 end,
        window_start = case when a.last_at < clock_timestamp() - make_interval(secs => :window)
                            then clock_timestamp() else a.window_start end,
        last_at = clock_timestamp()
      where a.count < :free
         or a.last_at + make_interval(secs => least(cast(:longest as double precision),
              :first * power(2, least(a.count - :free, 40)))) <= clock_timestamp()
      returning count
      """;

  private static final String REMAINING =
      """
      select cast(extract(epoch from a.last_at + make_interval(secs => least(
               cast(:longest as double precision), :first * power(2, least(a.count - :free, 40))))
               - clock_timestamp()) as double precision)
      from attempt a where a.kind = :kind and a.subject = :subject
      """;

  private final EntityManager db;

  AttemptRepository(EntityManager db) {
    this.db = db;
  }

  /** Counts one try; answers the wait if it is refused. Committed whatever happens afterwards. */
  @Transactional(TxType.REQUIRES_NEW)
  Optional<Duration> claim(String kind, String subject, MemberLimits.Rule rule) {
    String key = hashed(subject);
    List<?> counted =
        db.createNativeQuery(CLAIM)
            .setParameter("kind", kind)
            .setParameter("subject", key)
            .setParameter("window", seconds(rule.window()))
            .setParameter("free", rule.free())
            .setParameter("first", seconds(rule.first()))
            .setParameter("longest", seconds(rule.longest()))
            .getResultList();
    return counted.isEmpty() ? Optional.of(remaining(kind, key, rule)) : Optional.empty();
  }

  /** Forgets what was counted, after the right password. */
  @Transactional(TxType.REQUIRES_NEW)
  void forget(String kind, String subject) {
    db.createNativeQuery("delete from attempt where kind = :kind and subject = :subject")
        .setParameter("kind", kind)
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  /** Forgets whatever was counted for a subject: it is gone. */
  void forgetSubject(String subject) {
    db.createNativeQuery("delete from attempt where subject = :subject")
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  /** Takes one try back: it turned out to be a right one. */
  @Transactional(TxType.REQUIRES_NEW)
  void giveBack(String kind, String subject) {
    db.createNativeQuery(
            "update attempt set count = greatest(count - 1, 0)"
                + " where kind = :kind and subject = :subject")
        .setParameter("kind", kind)
        .setParameter("subject", hashed(subject))
        .executeUpdate();
  }

  /** Drops counts nobody has added to for a day. */
  void sweep() {
    db.createNativeQuery("delete from attempt where last_at < now() - interval '1 day'")
        .executeUpdate();
  }

  private Duration remaining(String kind, String key, MemberLimits.Rule rule) {
    double left =
        ((Number)
                db.createNativeQuery(REMAINING)
                    .setParameter("kind", kind)
                    .setParameter("subject", key)
                    .setParameter("free", rule.free())
                    .setParameter("first", seconds(rule.first()))
                    .setParameter("longest", seconds(rule.longest()))
                    .getSingleResult())
            .doubleValue();
    return Duration.ofSeconds(Math.max(1, (long) Math.ceil(left)));
  }

  private static double seconds(Duration duration) {
    return duration.toMillis() / 1000.0;
  }

  private static String hashed(String subject) {
    return HexFormat.of().formatHex(Secrets.sha256(subject));
  }
}
