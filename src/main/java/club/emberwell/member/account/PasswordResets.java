package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.account.OnceLinks.Kind;
import club.emberwell.member.account.OnceLinks.Link;
import club.emberwell.member.mail.MailOutbox;
import club.emberwell.member.pace.Throttle;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.text.Normalizer;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;

/** Links for people who lost their password: by a letter, or handed over by an owner. */
@ApplicationScoped
public class PasswordResets {
  private static final Logger LOG = Logger.getLogger(PasswordResets.class);
  private static final String ADDRESS = "reset-address";
  private static final String ACCOUNT = "reset-account";

  private final MemberRepository members;
  private final MemberChecks checks;
  private final OnceLinks links;
  private final MailOutbox mail;
  private final Throttle throttle;
  private final LinkLimits limits;
  private final Proof proof;
  private final Audit audit;
  private final ManagedExecutor aside;

  @SuppressWarnings("ParameterNumber") // each is one of its neighbours
  PasswordResets(
      MemberRepository members,
      MemberChecks checks,
      OnceLinks links,
      MailOutbox mail,
      Throttle throttle,
      LinkLimits limits,
      Proof proof,
      Audit audit,
      ManagedExecutor aside) {
    this.members = members;
    this.checks = checks;
    this.links = links;
    this.mail = mail;
    this.throttle = throttle;
    this.limits = limits;
    this.proof = proof;
    this.audit = audit;
    this.aside = aside;
  }

  /** A link to hand over. */
  public record HandedOver(String url, Instant expires) {}

  /** Whether letters can be sent; else the page says to ask an owner. */
  public boolean byMail() {
    return mail.available();
  }

  /**
   * Sends a link to whoever has this address here. The answer and the time it takes are the same
   * where nobody has it.
   */
  public void ask(String email, String addressPrefix) {
    if (!byMail()) {
      throw new EntryForbidden(
          EntryForbidden.Why.CLUB,
          "This server sends no e-mail. Ask an owner of the club for a link.");
    }
    String address = email == null ? "" : Normalizer.normalize(email, Normalizer.Form.NFKC).strip();
    Remarks.refuse(checks.address(address));
    throttle.claim(ADDRESS, addressPrefix, limits.address());
    throttle.claim(ACCOUNT, address.toLowerCase(Locale.ROOT), limits.account());
    aside.execute(() -> queue(address));
  }

  private void queue(String address) {
    try {
      QuarkusTransaction.requiringNew()
          .run(() -> members.byEmail(address).filter(Member::active).ifPresent(this::sendLink));
    } catch (RuntimeException e) {
      LOG.error("a link for a new password could not be queued", e);
    }
  }

  private void sendLink(Member member) {
    String url = links.make(Kind.RESET, new Link(member.id, member.email), limits.resetLife());
    mail.queueUnproved(
        member,
        "reset",
        "A new password",
        """
        Somebody, most likely you, asked for a new password for the member %s.

        Choose it here within %d minutes:
        %s

        If it was not you, do nothing; your password stays as it is.\
        """
            .formatted(member.handle, limits.resetLife().toMinutes(), url));
  }

  /**
   * Makes a link for an owner to hand over, for clubs without mail.
   *
   * @throws EntryUnknown where no active member has this name
   */
  public HandedOver handOver(Actor owner, String handle, Given given) {
    UUID id = QuarkusTransaction.requiringNew().call(() -> lost(owner, handle));
    proof.recent(owner, given);
    return QuarkusTransaction.requiringNew().call(() -> handOver(owner, members.findById(id)));
  }

  private UUID lost(Actor owner, String handle) {
    Member member =
        members
            .byHandle(handle == null ? "" : handle.strip())
            .filter(Member::active)
            .orElseThrow(() -> new EntryUnknown("active member"));
    if (owner.is(member.id)) {
      throw new EntryForbidden(
          EntryForbidden.Why.YOUR_OWN, "Change your own password on your account page.");
    }
    return member.id;
  }

  private HandedOver handOver(Actor owner, Member member) {
    String url = links.make(Kind.RESET, new Link(member.id, null), limits.resetLife());
    audit.record(owner, "make-reset-link", "member", member.id.toString(), "", Map.of());
    return new HandedOver(url, Instant.now().plus(limits.resetLife()));
  }
}
