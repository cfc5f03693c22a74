package club.emberwell.member.session;

import club.emberwell.member.Member;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Scope;
import club.emberwell.member.Secrets;
import club.emberwell.member.Texts;
import club.emberwell.member.pace.Throttle;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.Unproven;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.text.Normalizer;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Signs browsers in and out. A session is a row; whoever deletes the row ends it. */
@ApplicationScoped
public class Sessions {
  private static final String ACCOUNT = "sign-in-account";
  private static final String ADDRESS = "sign-in-address";
  private static final String UNPROVEN = "Wrong user name or password.";

  private final SessionRepository sessions;
  private final MemberRepository members;
  private final Passwords passwords;
  private final Throttle throttle;
  private final SignIns signIns;
  private final SignInLimits limits;

  Sessions(
      SessionRepository sessions,
      MemberRepository members,
      Passwords passwords,
      Throttle throttle,
      SignIns signIns,
      SignInLimits limits) {
    this.sessions = sessions;
    this.members = members;
    this.passwords = passwords;
    this.throttle = throttle;
    this.signIns = signIns;
    this.limits = limits;
  }

  /**
   * A fresh session.
   *
   * @param secret for the cookie; stored nowhere
   */
  public record SignedIn(String secret, Instant expires, MemberView member) {}

  /**
   * A session as its owner sees it.
   *
   * @param label device and browser in words
   */
  public record SessionView(
      UUID id, String label, Instant createdAt, Instant lastSeen, Instant expires) {}

  /**
   * Whom a credential stands for, and what it may be used for.
   *
   * @param member with the role that the credential has
   * @param lessened whether the member has a higher one
   * @param renewed what the browser has to bring from now on; null = what it brought
   */
  public record Holder(
      UUID credential, MemberView member, Set<Scope> scopes, boolean lessened, SignedIn renewed) {
    static Holder ofSession(UUID session, MemberView member, SignedIn renewed) {
      return new Holder(session, member, Set.of(Scope.values()), false, renewed);
    }
  }

  /**
   * A browser and where it is.
   *
   * @param agent what it calls itself, or null
   */
  public record From(String agent, String addressPrefix) {}

  /**
   * Starts a session. Unknown names cost the same work as known ones and count the same.
   *
   * @param label what the browser calls itself, or null
   * @throws Unproven where name and password do not fit together
   * @throws EntryForbidden for an account that waits or was shut out
   * @throws TooManyTries of this account, or from this address
   */
  public SignedIn signIn(String handle, String password, String label, String addressPrefix) {
    UUID member = prove(handle, password, addressPrefix);
    return begin(member, new From(label, addressPrefix));
  }

  private SignedIn begin(UUID member, From from) {
    SignedIn session = QuarkusTransaction.requiringNew().call(() -> begin(member, from.agent()));
    signIns.note(
        member, SignInEvent.SIGNED_IN, from.addressPrefix(), BrowserWords.of(from.agent()));
    return session;
  }

  /** Starts a session for somebody whom the sign-in provider vouches for. */
  public SignedIn start(UUID memberId, From from) {
    MemberStatus status =
        QuarkusTransaction.requiringNew().call(() -> members.findById(memberId).status);
    return begin(admitted(memberId, status), from);
  }

  /** Checks a password, throttled by account and address; answers the member's id. */
  public UUID prove(String handle, String password, String addressPrefix) {
    String name = handle == null ? "" : Normalizer.normalize(handle, Normalizer.Form.NFKC).strip();
    String account = name.toLowerCase(Locale.ROOT);
    throttle.claim(ADDRESS, addressPrefix, limits.address());
    throttle.claim(ACCOUNT, account, limits.account());
    Optional<Stored> found = QuarkusTransaction.requiringNew().call(() -> stored(name));
    String normal = PasswordRules.normal(password == null ? "" : password);
    String given = Texts.length(normal) > MemberLimits.PASSWORD_MAX ? "" : normal;
    if (!passwords.matches(given, found.map(Stored::hash).orElse(null))) {
      found.ifPresentOrElse(
          who -> signIns.note(who.id(), SignInEvent.WRONG_PASSWORD, addressPrefix, ""),
          () -> signIns.unknownName(addressPrefix));
      throw new Unproven(UNPROVEN);
    }
    throttle.forget(ACCOUNT, account);
    throttle.giveBack(ADDRESS, addressPrefix);
    return admitted(found.orElseThrow(), given);
  }

  private UUID admitted(Stored member, String password) {
    if (passwords.stale(member.hash())) {
      String fresh = passwords.hash(password);
      QuarkusTransaction.requiringNew()
          .run(() -> members.update("passwordHash = ?1 where id = ?2", fresh, member.id()));
    }
    return admitted(member.id(), member.status());
  }

  private UUID admitted(UUID member, MemberStatus status) {
    return switch (status) {
      case ACTIVE -> member;
      case WAITING -> throw new EntryForbidden(EntryForbidden.Why.ACCOUNT, stillWaiting(member));
      case BANNED ->
          throw new EntryForbidden(
              EntryForbidden.Why.ACCOUNT, "This account is banned by a moderator.");
      case ERASED -> throw new Unproven(UNPROVEN);
    };
  }

  private String stillWaiting(UUID member) {
    return QuarkusTransaction.requiringNew()
        .call(() -> sessions.refusal(member))
        .map(reason -> "A moderator has declined your request: " + reason)
        .orElse("Your account waits for approval by a moderator.");
  }

  private Optional<Stored> stored(String handle) {
    return members.byHandle(handle).map(m -> new Stored(m.id, m.passwordHash, m.status));
  }

  private SignedIn begin(UUID memberId, String label) {
    String secret = Secrets.random();
    MemberSession session =
        MemberSession.begun(memberId, BrowserWords.kept(label), secret, limits.sessionLife());
    sessions.persist(session);
    MemberView member = Members.view(members.findById(memberId));
    return new SignedIn(secret, session.expiresAt, member);
  }

  /** Whose live session this secret is. Writes down that it was seen, at most once a minute. */
  @Transactional
  public Optional<Holder> find(String secret) {
    MemberSession session = sessions.findById(Secrets.sha256(secret));
    Instant now = Instant.now();
    if (session == null
        || session.expiresAt.isBefore(now)
        || session.lastSeen.plus(limits.sessionIdle()).isBefore(now)) {
      return Optional.empty();
    }
    if (session.lastSeen.plus(MemberLimits.SEEN_EVERY).isBefore(now)) {
      sessions.update("lastSeen = ?1 where idHash = ?2", now, session.idHash);
    }
    Member member = members.findById(session.memberId);
    if (!member.active()) {
      return Optional.empty();
    }
    return Optional.of(
        session.renew
            ? renewed(session, Members.view(member))
            : Holder.ofSession(session.id, Members.view(member), null));
  }

  /** Where pages are asked for at the same time, one of them brings the new secret. */
  private Holder renewed(MemberSession old, MemberView member) {
    if (!sessions.replace(old.idHash, Instant.now().plus(MemberLimits.REPLACED_LIFE))) {
      return Holder.ofSession(old.id, member, null);
    }
    String secret = Secrets.random();
    MemberSession fresh = old.successor(secret);
    sessions.persist(fresh);
    return Holder.ofSession(fresh.id, member, new SignedIn(secret, fresh.expiresAt, member));
  }

  /** Notes that the member proved just now, in this session, who they are. */
  @Transactional
  public void confirmed(UUID memberId, UUID session) {
    sessions.update(
        "confirmedAt = ?1 where memberId = ?2 and id = ?3", Instant.now(), memberId, session);
  }

  /** Gives every browser of a member another secret with its next page. */
  @Transactional
  public void renewAll(UUID memberId) {
    sessions.update("renew = true where memberId = ?1 and replaced = false", memberId);
  }

  /**
   * Ends all sessions of a member and begins another in the browser of one of them.
   *
   * @param here the session of that browser; where it is none of the member's, nothing begins
   */
  @Transactional
  public Optional<SignedIn> onlyHere(UUID memberId, UUID here) {
    Optional<String> label = sessions.label(memberId, here);
    sessions.delete("memberId", memberId);
    return label.map(agent -> begin(memberId, agent));
  }

  /** Ends the session of this secret, if it is one, and what it replaced; answers whose. */
  @Transactional
  public Optional<UUID> end(String secret) {
    MemberSession session = sessions.findById(Secrets.sha256(secret));
    if (session == null) {
      return Optional.empty();
    }
    sessions.delete(session);
    sessions.delete("memberId = ?1 and replaced = true", session.memberId);
    return Optional.of(session.memberId);
  }

  /** Somebody leaves. */
  public void signOut(String secret, From from) {
    end(secret)
        .ifPresent(
            member ->
                signIns.note(
                    member,
                    SignInEvent.SIGNED_OUT,
                    from.addressPrefix(),
                    BrowserWords.of(from.agent())));
  }

  /** The member's live sessions, latest first. */
  @Transactional
  public List<SessionView> of(UUID memberId) {
    Instant now = Instant.now();
    List<MemberSession> live =
        sessions.list(
            """
            memberId = ?1 and replaced = false and expiresAt > ?2 and lastSeen > ?3
            order by lastSeen desc\
            """,
            memberId,
            now,
            now.minus(limits.sessionIdle()));
    return live.stream().map(Sessions::view).toList();
  }

  private static SessionView view(MemberSession session) {
    return new SessionView(
        session.id,
        BrowserWords.of(session.label),
        session.createdAt,
        session.lastSeen,
        session.expiresAt);
  }

  /** Ends one of the member's own sessions; false if it is none. */
  @Transactional
  public boolean end(UUID memberId, UUID session) {
    return sessions.delete("memberId = ?1 and id = ?2", memberId, session) > 0;
  }

  /** Ends all sessions of a member. */
  @Transactional
  public void endAll(UUID memberId) {
    sessions.delete("memberId", memberId);
  }

  /**
   * Ends the sessions of all members.
   *
   * @param here the one that goes on; none does where this is a token's id
   */
  @Transactional
  public void endAllBut(UUID here) {
    sessions.delete("id <> ?1", here);
  }

  /** Removes sessions that are over. */
  @Scheduled(every = "1h", delayed = "3m")
  @Transactional
  void sweep() {
    Instant now = Instant.now();
    sessions.delete("expiresAt < ?1 or lastSeen < ?2", now, now.minus(limits.sessionIdle()));
  }

  private record Stored(UUID id, String hash, MemberStatus status) {}
}
