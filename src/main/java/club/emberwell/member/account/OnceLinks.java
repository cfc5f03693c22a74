package club.emberwell.member.account;

import club.emberwell.member.Secrets;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Links that work once; a member has one of a kind at most. In the caller's transaction. */
@ApplicationScoped
class OnceLinks {
  /** What a link does. */
  enum Kind {
    CONFIRM,
    RESET;

    /** As stored and as the path spells it. */
    String code() {
      return this == CONFIRM ? "confirm" : "reset";
    }
  }

  /**
   * Whom a link is for.
   *
   * @param email the address it was sent to; null for one handed over otherwise
   */
  record Link(UUID member, String email) {}

  private final OnceLinkRepository rows;
  private final String publicUrl;

  OnceLinks(
      OnceLinkRepository rows, @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.rows = rows;
    this.publicUrl = publicUrl;
  }

  /** The address of a new link; an earlier one of the kind ends. */
  String make(Kind kind, Link link, Duration life) {
    String secret = Secrets.random();
    rows.end(kind, link.member());
    rows.add(kind, link, Secrets.sha256(secret), life);
    return publicUrl + "/" + kind.code() + "/" + secret;
  }

  Optional<Link> find(Kind kind, String secret) {
    return rows.find(kind, hash(secret));
  }

  /** Uses a link up. */
  Optional<Link> take(Kind kind, String secret) {
    return rows.take(kind, hash(secret));
  }

  void end(Kind kind, UUID member) {
    rows.end(kind, member);
  }

  /** Removes links that are over. */
  @Scheduled(every = "1h", delayed = "4m")
  @Transactional
  void sweep() {
    rows.sweep();
  }

  private static byte[] hash(String secret) {
    return Secrets.sha256(secret == null ? "" : secret);
  }
}
