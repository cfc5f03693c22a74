package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.account.OnceLinks.Kind;
import club.emberwell.member.account.OnceLinks.Link;
import club.emberwell.member.mail.MailOutbox;
import club.emberwell.member.pace.Throttle;
import club.emberwell.member.session.Proof;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.text.Normalizer;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Mail addresses of members: changed after proof, believed after a letter arrived. */
@ApplicationScoped
public class Addresses {
  private static final String ENTITY = "member";
  private static final String ASKED = "confirm-member";

  private final MemberRepository members;
  private final MemberChecks checks;
  private final OnceLinks links;
  private final MailOutbox mail;
  private final Proof proof;
  private final Throttle throttle;
  private final LinkLimits limits;
  private final Audit audit;

  Addresses(
      MemberRepository members,
      MemberChecks checks,
      OnceLinks links,
      MailOutbox mail,
      Proof proof,
      Throttle throttle,
      LinkLimits limits,
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
  public MemberView change(
      Actor actor, UUID session, String email, String password, String addressPrefix) {
    String wanted = email == null ? "" : Normalizer.normalize(email, Normalizer.Form.NFKC).strip();
    Remarks.refuse(wanted.isEmpty() ? List.of() : checks.address(wanted));
    proof.of(actor, session, password, addressPrefix);
    return QuarkusTransaction.requiringNew()
        .call(() -> store(actor, wanted.isEmpty() ? null : wanted));
  }

  private MemberView store(Actor actor, String email) {
    Member member = members.findById(actor.memberId());
    if (email != null && members.emailTaken(email, member.id)) {
      throw new EntryRefused(MemberChecks.emailTaken());
    }
    if (member.email != null && member.emailConfirmedAt != null) {
      mail.queueUnproved(
          member,
          "address",
          "Your e-mail address was changed",
          "E-mails from the club no longer go to this address. If this was not you, sign in, change your password, and tell an owner of the club.");
    }
    member.email = email;
    member.emailConfirmedAt = null;
    links.end(Kind.CONFIRM, member.id);
    links.end(Kind.RESET, member.id);
    members.flush();
    sendLink(member);
    audit.record(actor, "change-address", ENTITY, member.id.toString(), "", Map.of());
    return Members.view(member);
  }

  /** Sends the letter that proves the address once more. */
  public void askAgain(Actor actor) {
    throttle.claim(ASKED, actor.memberId().toString(), limits.account());
    QuarkusTransaction.requiringNew().run(() -> sendLink(members.findById(actor.memberId())));
  }

  /** Queues the proving letter in the caller's transaction, where there is something to prove. */
  public boolean sendLink(Member member) {
    if (!mail.available() || member.email == null || member.emailConfirmedAt != null) {
      return false;
    }
    String url = links.make(Kind.CONFIRM, new Link(member.id, member.email), limits.confirmLife());
    return mail.queueUnproved(
        member,
        "confirm",
        "Is this your e-mail address?",
        """
        Somebody, most likely you, gave this address for the member %s.

        Open this within %d hours to say that it is yours:
        %s

        If it was not you, do nothing."""
            .formatted(member.handle, limits.confirmLife().toHours(), url));
  }

  /** Whether the secret of a letter still works. */
  @Transactional
  public boolean waits(String secret) {
    return links.find(Kind.CONFIRM, secret).isPresent();
  }

  /** Believes the address; false where the link is used up, over, or the address changed. */
  @Transactional
  public boolean confirm(String secret) {
    Optional<Link> link = links.take(Kind.CONFIRM, secret);
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
}
