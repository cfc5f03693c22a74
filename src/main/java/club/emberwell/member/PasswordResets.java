package club.emberwell.member;

import club.emberwell.member.OnceLinkRepository.Kind;
import club.emberwell.member.OnceLinkRepository.Link;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
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
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;

/** New passwords for people who lost theirs: by a letter, or by a link an owner hands over. */
@ApplicationScoped
public class PasswordResets {
  private static final Logger LOG = Logger.getLogger(PasswordResets.class);
  private static final String ENTITY = "member";
  private static final String ADDRESS = "reset-address";
  private static final String ACCOUNT = "reset-account";
  private static final String TRIED = "reset-link-address";

  private final MemberRepository members;
  private final MemberChecks checks;
  private final PasswordRules rules;
  private final Passwords passwords;
  private final OnceLinkRepository links;
  private final MailOutbox mail;
  private final AttemptRepository throttle;
  private final DoorLimits limits;
  private final Sessions sessions;
  private final Tokens tokens;
  private final Audit audit;
  private final ManagedExecutor aside;

  @ConfigProperty(name = "emberwell.public-url")
  String publicUrl;

  PasswordResets(
      MemberRepository members,
      MemberChecks checks,
      PasswordRules rules,
      Passwords passwords,
      OnceLinkRepository links,
      MailOutbox mail,
      AttemptRepository throttle,
      DoorLimits limits,
      Sessions sessions,
      Tokens tokens,
      Audit audit,
      ManagedExecutor aside) {
    this.members = members;
    this.checks = checks;
    this.rules = rules;
    this.passwords = passwords;
    this.links = links;
    this.mail = mail;
    this.throttle = throttle;
    this.limits = limits;
    this.sessions = sessions;
    this.tokens = tokens;
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
  public Outcome<Boolean> ask(String email, String addressPrefix) {
    if (!byMail()) {
      return new Outcome.Denied<>(
          "This server sends no mail: ask an owner of the club for a link.");
    }
    String address = email == null ? "" : Normalizer.normalize(email, Normalizer.Form.NFKC).strip();
    List<Remark> remarks = checks.address(address);
    if (!remarks.isEmpty()) {
      return new Outcome.Refused<>(remarks);
    }
    Optional<Duration> wait =
        throttle
            .claim(ADDRESS, addressPrefix, limits.resetAddress())
            .or(
                () ->
                    throttle.claim(
                        ACCOUNT, address.toLowerCase(Locale.ROOT), limits.resetAccount()));
    if (wait.isPresent()) {
      return new Outcome.Throttled<>(wait.get());
    }
    aside.execute(() -> queue(address));
    return new Outcome.Done<>(true);
  }

  private void queue(String address) {
    try {
      QuarkusTransaction.requiringNew()
          .run(
              () ->
                  members
                      .byEmail(address)
                      .filter(m -> MemberStatus.ACTIVE.code().equals(m.status))
                      .ifPresent(this::sendLink));
    } catch (RuntimeException e) {
      LOG.error("a link for a new password could not be queued", e);
    }
  }

  private void sendLink(Member member) {
    String url = fresh(member.id, member.email);
    mail.queueUnproved(
        member,
        "reset",
        "A new password",
        "Somebody, most likely you, asked for a new password for the member "
            + member.handle
            + ".\n\nChoose it here within "
            + limits.resetLinkLife().toMinutes()
            + " minutes:\n"
            + url
            + "\n\nIf it was not you, do nothing; your password stays as it is.");
  }

  private String fresh(UUID member, String email) {
    String secret = Secrets.random();
    links.replace(Kind.RESET, member, email, Secrets.sha256(secret), limits.resetLinkLife());
    return publicUrl + "/reset/" + secret;
  }

  /**
   * Makes a link for an owner to hand over, for clubs without mail.
   *
   * @throws EntryUnknown where no active member has this name
   */
  @Transactional
  public HandedOver handOver(Actor owner, String handle) {
    Member member =
        members
            .byHandle(handle == null ? "" : handle.strip())
            .filter(m -> MemberStatus.ACTIVE.code().equals(m.status))
            .orElseThrow(() -> new EntryUnknown("active member"));
    if (owner.is(member.id)) {
      // a token must not be enough to take its owner's account over
      throw new EntryForbidden("Change your own password on your account page.");
    }
    String url = fresh(member.id, null);
    audit.record(owner, "make-reset-link", ENTITY, member.id.toString(), "", Map.of());
    return new HandedOver(url, Instant.now().plus(limits.resetLinkLife()));
  }

  /** Whether a link still works. */
  @Transactional
  public boolean waits(String secret) {
    return links.find(Kind.RESET, Secrets.sha256(secret)).isPresent();
  }

  /** Sets a new password by a link, which is used up; every session and token ends. */
  public Outcome<MemberView> redeem(String secret, String password, String addressPrefix) {
    Optional<Duration> wait = throttle.claim(TRIED, addressPrefix, limits.codeAddress());
    if (wait.isPresent()) {
      return new Outcome.Throttled<>(wait.get());
    }
    byte[] hash = Secrets.sha256(secret == null ? "" : secret);
    Optional<String> handle =
        QuarkusTransaction.requiringNew()
            .call(() -> links.find(Kind.RESET, hash).map(l -> members.findById(l.member()).handle));
    if (handle.isEmpty()) {
      return over();
    }
    throttle.giveBack(TRIED, addressPrefix);
    Optional<Remark> remark = rules.check(password, "/password", handle.get());
    if (remark.isPresent()) {
      return Outcome.refused(remark.get());
    }
    String stored = passwords.hash(PasswordRules.normal(password));
    return QuarkusTransaction.requiringNew().call(() -> store(hash, stored));
  }

  private Outcome<MemberView> store(byte[] hash, String password) {
    Optional<Link> link = links.take(Kind.RESET, hash);
    if (link.isEmpty()) {
      return over();
    }
    Member member = members.findById(link.get().member());
    member.passwordHash = password;
    if (member.email != null && member.email.equals(link.get().email())) {
      // the letter arrived, which is all a confirmation could show
      member.emailConfirmedAt = Instant.now();
    }
    sessions.endAll(member.id, null);
    tokens.revokeAll(member.id);
    audit.record(
        Members.view(member).actor(), "reset-password", ENTITY, member.id.toString(), "", Map.of());
    members.flush();
    return new Outcome.Done<>(Members.view(member));
  }

  private static Outcome<MemberView> over() {
    return Outcome.refused(
        Remark.error(
            RemarkId.LINK_OVER,
            "/link",
            "This link was used, is too old, or never was. Ask again."));
  }
}
