package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.account.OnceLinks.Kind;
import club.emberwell.member.account.OnceLinks.Link;
import club.emberwell.member.pace.Throttle;
import club.emberwell.member.session.Passwords;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.SignedIn;
import club.emberwell.member.session.SignInEvent;
import club.emberwell.member.session.SignIns;
import club.emberwell.member.session.Tokens;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Sets new passwords for whoever knows the old one or has a link. */
@ApplicationScoped
public class NewPasswords {
  private static final String ENTITY = "member";
  private static final String FIELD = "/password";
  private static final String TRIED = "reset-link-address";

  private final MemberRepository members;
  private final Passwords passwords;
  private final OnceLinks links;
  private final Throttle throttle;
  private final LinkLimits limits;
  private final Sessions sessions;
  private final Tokens tokens;
  private final SignIns signIns;
  private final Audit audit;

  @SuppressWarnings("ParameterNumber") // each is one of its neighbours
  NewPasswords(
      MemberRepository members,
      Passwords passwords,
      OnceLinks links,
      Throttle throttle,
      LinkLimits limits,
      Sessions sessions,
      Tokens tokens,
      SignIns signIns,
      Audit audit) {
    this.members = members;
    this.passwords = passwords;
    this.links = links;
    this.throttle = throttle;
    this.limits = limits;
    this.sessions = sessions;
    this.tokens = tokens;
    this.signIns = signIns;
    this.audit = audit;
  }

  /**
   * What somebody wants who knows the present password.
   *
   * @param keepTokens whether tokens of programs go on
   */
  public record Wish(String current, String fresh, boolean keepTokens) {}

  /**
   * Changes a password and ends every session and, unless they are to be kept, every token.
   *
   * @param here the session that changes it, whose browser goes on in another; or null
   * @return that other session
   */
  public Optional<SignedIn> change(Actor actor, Wish wish, UUID here, String addressPrefix) {
    String handle =
        QuarkusTransaction.requiringNew().call(() -> members.findById(actor.memberId()).handle);
    Remarks.refuse(passwords.check(wish.fresh(), FIELD, handle).stream().toList());
    sessions.prove(handle, wish.current(), addressPrefix);
    String hash = passwords.hash(wish.fresh());
    Optional<SignedIn> next =
        QuarkusTransaction.requiringNew().call(() -> change(actor, wish, hash, here));
    signIns.note(actor.memberId(), SignInEvent.PASSWORD_CHANGED, addressPrefix, "");
    return next;
  }

  private Optional<SignedIn> change(Actor actor, Wish wish, String hash, UUID here) {
    store(members.findById(actor.memberId()), hash, actor, "change-password");
    if (!wish.keepTokens()) {
      tokens.revokeAll(actor.memberId());
    }
    return sessions.onlyHere(actor.memberId(), here);
  }

  /** Whether a link still works. */
  @Transactional
  public boolean waits(String secret) {
    return links.find(Kind.RESET, secret).isPresent();
  }

  /** Sets a new password by a link, which is used up; every session and token ends. */
  public MemberView redeem(String secret, String password, String addressPrefix) {
    throttle.claim(TRIED, addressPrefix, limits.tried());
    String handle =
        QuarkusTransaction.requiringNew()
            .call(
                () -> links.find(Kind.RESET, secret).map(l -> members.findById(l.member()).handle))
            .orElseThrow(NewPasswords::over);
    throttle.giveBack(TRIED, addressPrefix);
    Remarks.refuse(passwords.check(password, FIELD, handle).stream().toList());
    String hash = passwords.hash(password);
    MemberView member = QuarkusTransaction.requiringNew().call(() -> storeByLink(secret, hash));
    signIns.note(member.id(), SignInEvent.PASSWORD_CHANGED, addressPrefix, "");
    return member;
  }

  private MemberView storeByLink(String secret, String hash) {
    Link link = links.take(Kind.RESET, secret).orElseThrow(NewPasswords::over);
    Member member = members.findById(link.member());
    if (member.email != null && member.email.equals(link.email())) {
      // the letter arrived, which is all a confirmation could show
      member.emailConfirmedAt = Instant.now();
    }
    sessions.endAll(member.id);
    tokens.revokeAll(member.id);
    return store(member, hash, Members.view(member).actor(), "reset-password");
  }

  private MemberView store(Member member, String hash, Actor actor, String action) {
    member.passwordHash = hash;
    audit.record(actor, action, ENTITY, member.id.toString(), "", Map.of());
    members.flush();
    return Members.view(member);
  }

  private static EntryRefused over() {
    return new EntryRefused(
        RemarkId.LINK_OVER, "/link", "This link is used up, too old or wrong. Ask again.");
  }
}
