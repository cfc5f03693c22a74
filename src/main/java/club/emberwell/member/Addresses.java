package club.emberwell.member;

import club.emberwell.member.OnceLinkRepository.Kind;
import club.emberwell.member.OnceLinkRepository.Link;
import club.emberwell.remark.Remark;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.text.Normalizer;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Mail addresses of members: changed after proof, believed after a letter arrived. */
@ApplicationScoped
public class Addresses {
  private static final String ENTITY = "member";
  private static final String ASKED = "confirm-member";

  private final MemberRepository members;
  private final MemberChecks checks;
  private final OnceLinkRepository links;
  private final MailOutbox mail;
  private final Proof proof;
  private final AttemptRepository throttle;
  private final DoorLimits limits;
  private final Audit audit;

  @ConfigProperty(name = "emberwell.public-url")
  String publicUrl;

  Addresses(
      MemberRepository members,
      MemberChecks checks,
      OnceLinkRepository links,
      MailOutbox mail,
      Proof proof,
      AttemptRepository throttle,
      DoorLimits limits,
      Audit audit) {
    this.members = members;
    this.checks = checks;
    this.links = links;
    this.mail = mail;
    this.proof = proof;
    this.throttle = throttle;
    this.limits = limits;
    this.audit = audit;
  }

  /**
   * Sets or takes away the member's address; a new one is unproved until its letter arrives.
   *
   * @param email empty takes it away
   */
  public Outcome<MemberView> change(
      Actor actor, UUID session, String email, String password, String addressPrefix) {
    String wanted = email == null ? "" : Normalizer.normalize(email, Normalizer.Form.NFKC).strip();
    List<Remark> remarks = wanted.isEmpty() ? List.of() : checks.address(wanted);
    if (!remarks.isEmpty()) {
      return new Outcome.Refused<>(remarks);
    }
    Outcome<UUID> proved = proof.of(actor, session, password, addressPrefix);
    if (!(proved instanceof Outcome.Done<UUID>)) {
      return Outcome.recast(proved);
    }
    return QuarkusTransaction.requiringNew()
        .call(() -> store(actor, wanted.isEmpty() ? null : wanted));
  }

  private Outcome<MemberView> store(Actor actor, String email) {
    Member member = members.findById(actor.memberId());
    if (email != null && members.emailTaken(email, member.id)) {
      return Outcome.refused(Admissions.emailTaken());
    }
    if (member.email != null && member.emailConfirmedAt != null) {
      mail.queueUnproved(
          member,
          "address",
          "Your mail address was changed",
          "Letters from the club no longer come to this address. If that was not you, sign in,"
              + " change your password, and tell an owner of the club.");
    }
    member.email = email;
    member.emailConfirmedAt = null;
    links.end(Kind.CONFIRM, member.id);
    links.end(Kind.RESET, member.id);
    members.flush();
    sendLink(member);
    audit.record(actor, "change-address", ENTITY, member.id.toString(), "", Map.of());
    return new Outcome.Done<>(Members.view(member));
  }

  /** Sends the letter that proves the address once more. */
  public Outcome<Boolean> askAgain(Actor actor) {
    Optional<Duration> wait =
        throttle.claim(ASKED, actor.memberId().toString(), limits.resetAccount());
    return wait.<Outcome<Boolean>>map(Outcome.Throttled::new)
        .orElseGet(
            () ->
                QuarkusTransaction.requiringNew()
                    .call(() -> new Outcome.Done<>(sendLink(members.findById(actor.memberId())))));
  }

  /** Queues the proving letter in the caller's transaction, where there is something to prove. */
  boolean sendLink(Member member) {
    if (!mail.available() || member.email == null || member.emailConfirmedAt != null) {
      return false;
    }
    String secret = Secrets.random();
    links.replace(
        Kind.CONFIRM, member.id, member.email, Secrets.sha256(secret), limits.confirmLinkLife());
    return mail.queueUnproved(
        member,
        "confirm",
        "Is this your mail address?",
        "Somebody, most likely you, gave this address for the member "
            + member.handle
            + ".\n\nOpen this within "
            + limits.confirmLinkLife().toHours()
            + " hours to say that it is yours:\n"
            + publicUrl
            + "/confirm/"
            + secret
            + "\n\nIf it was not you, do nothing.");
  }

  /** Whether the secret of a letter still works. */
  @Transactional
  public boolean waits(String secret) {
    return links.find(Kind.CONFIRM, Secrets.sha256(secret)).isPresent();
  }

  /** Believes the address; false where the link is used up, over, or the address changed. */
  @Transactional
  public boolean confirm(String secret) {
    Optional<Link> link = links.take(Kind.CONFIRM, Secrets.sha256(secret));
    if (link.isEmpty()) {
      return false;
    }
    Member member = members.findById(link.get().member());
    boolean same =
        member.email != null
            && member
                .email
                .toLowerCase(Locale.ROOT)
                .equals(link.get().email().toLowerCase(Locale.ROOT));
    if (same) {
      member.emailConfirmedAt = Instant.now();
    }
    return same;
  }

  /** Removes links that are over. */
  @Scheduled(every = "1h", delayed = "4m")
  @Transactional
  void sweep() {
    links.sweep();
  }
}
