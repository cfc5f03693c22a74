package club.emberwell.member.session;

import club.emberwell.member.Actor;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Scope;
import club.emberwell.member.Secrets;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.Sessions.Holder;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Keys for programs. A token is shown once; its row says when it ends. */
@ApplicationScoped
public class Tokens {
  /** So that a leaked token is recognised by whoever finds it. */
  public static final String PREFIX = "ew_";

  private final ApiTokenRepository tokens;
  private final MemberRepository members;
  private final MemberChecks checks;
  private final Sessions sessions;
  private final Proof proof;
  private final SignIns signIns;
  private final SignInLimits limits;

  Tokens(
      ApiTokenRepository tokens,
      MemberRepository members,
      MemberChecks checks,
      Sessions sessions,
      Proof proof,
      SignIns signIns,
      SignInLimits limits) {
    this.tokens = tokens;
    this.members = members;
    this.checks = checks;
    this.sessions = sessions;
    this.proof = proof;
    this.signIns = signIns;
    this.limits = limits;
  }

  /**
   * A fresh token.
   *
   * @param token the only time it is seen
   */
  public record NewToken(UUID id, String token, List<String> scopes, Instant expires) {}

  /**
   * What somebody wants of a token.
   *
   * @param label what its owner will know it by
   * @param scopes their codes; null: the usual ones of the role
   */
  public record Wish(String label, List<String> scopes) {}

  /**
   * A token as its owner sees it.
   *
   * @param lastUsed null if never, up to a minute late
   */
  public record TokenView(
      UUID id,
      String label,
      List<String> scopes,
      Instant createdAt,
      Instant expires,
      Instant lastUsed) {}

  /** Makes a token for whoever knows the password. Throttled like a sign-in. */
  public NewToken create(String handle, String password, Wish wish, String addressPrefix) {
    List<Remark> remarks = new ArrayList<>();
    if (handle == null || handle.isBlank()) {
      remarks.add(Remark.error(RemarkId.HANDLE_MISSING, "/handle", "Please enter a name."));
    }
    if (password == null || password.isEmpty()) {
      remarks.add(Remark.error(RemarkId.PASSWORD_MISSING, "/password", "Please enter a password."));
    }
    check(wish, remarks);
    Remarks.refuse(remarks);
    UUID member = sessions.prove(handle, password, addressPrefix);
    return QuarkusTransaction.requiringNew().call(() -> store(member, wish));
  }

  /** Makes a token for a member who is signed in, and proved a moment ago who they are. */
  public NewToken create(Actor actor, Wish wish, Given given) {
    List<Remark> remarks = new ArrayList<>();
    check(wish, remarks);
    Remarks.refuse(remarks);
    proof.recent(actor, given);
    return QuarkusTransaction.requiringNew().call(() -> store(actor.memberId(), wish));
  }

  private NewToken store(UUID memberId, Wish wish) {
    if (live(memberId).size() >= MemberLimits.TOKENS_MAX) {
      throw new EntryRefused(
          RemarkId.TOKENS_MANY,
          "",
          "You have " + MemberLimits.TOKENS_MAX + " tokens, which is the limit. Revoke one first.");
    }
    Set<Scope> scopes =
        wish.scopes() == null
            ? Scope.usual(Members.view(members.findById(memberId)).role())
            : Scope.read(String.join(" ", wish.scopes()));
    String secret = PREFIX + Secrets.random();
    ApiToken token = new ApiToken();
    token.id = UUID.randomUUID();
    token.memberId = memberId;
    token.hash = Secrets.sha256(secret);
    token.label = wish.label().strip();
    token.scopes = Scope.stored(scopes);
    token.createdAt = Instant.now();
    token.expiresAt = token.createdAt.plus(limits.tokenLife());
    tokens.persist(token);
    return new NewToken(token.id, secret, Scope.codes(scopes), token.expiresAt);
  }

  /**
   * Whose live token this is. Writes down its use, at most once a minute, and from where the first
   * time.
   */
  @Transactional
  public Optional<Holder> find(String secret, String addressPrefix) {
    if (!secret.startsWith(PREFIX)) {
      return Optional.empty();
    }
    Instant now = Instant.now();
    ApiToken token = tokens.find("hash", Secrets.sha256(secret)).firstResult();
    if (token == null || token.revokedAt != null || token.expiresAt.isBefore(now)) {
      return Optional.empty();
    }
    if (token.lastUsed == null || token.lastUsed.plus(MemberLimits.SEEN_EVERY).isBefore(now)) {
      tokens.update("lastUsed = ?1 where id = ?2", now, token.id);
    }
    if (!NetworkWords.of(addressPrefix).equals(token.lastNetwork)) {
      signIns.tokenUsed(token, addressPrefix);
    }
    Member member = members.findById(token.memberId);
    Set<Scope> scopes = Scope.read(token.scopes);
    MemberView view = Members.view(member).within(scopes);
    return member.active()
        ? Optional.of(new Holder(token.id, view, scopes, view.role() != member.role, null))
        : Optional.empty();
  }

  /** The member's live tokens, newest first. */
  @Transactional
  public List<TokenView> of(UUID memberId) {
    return live(memberId).stream().map(Tokens::view).toList();
  }

  /** One of the member's own live tokens. */
  @Transactional
  public Optional<TokenView> of(UUID memberId, UUID id) {
    return live(memberId).stream().filter(t -> t.id.equals(id)).findFirst().map(Tokens::view);
  }

  /** Ends one of the member's own tokens; false if it is none. */
  @Transactional
  public boolean revoke(UUID memberId, UUID id) {
    return tokens.update(
            "revokedAt = ?1 where memberId = ?2 and id = ?3 and revokedAt is null",
            Instant.now(),
            memberId,
            id)
        > 0;
  }

  /** Ends all tokens of a member. */
  @Transactional
  public void revokeAll(UUID memberId) {
    tokens.update(
        "revokedAt = ?1 where memberId = ?2 and revokedAt is null", Instant.now(), memberId);
  }

  /** Ends all tokens of all members. */
  @Transactional
  public void revokeEveryone() {
    tokens.update("revokedAt = ?1 where revokedAt is null", Instant.now());
  }

  /**
   * Takes acting as somebody in charge off all tokens of a member, for whom it means nothing today
   * and would mean something one day.
   */
  @Transactional
  public void lessen(UUID memberId) {
    tokens.update("scopes = replace(scopes, ' moderate', '') where memberId = ?1", memberId);
  }

  private List<ApiToken> live(UUID memberId) {
    return tokens.list(
        "memberId = ?1 and revokedAt is null and expiresAt > ?2 order by createdAt desc",
        memberId,
        Instant.now());
  }

  private static TokenView view(ApiToken token) {
    return new TokenView(
        token.id,
        token.label,
        Scope.codes(Scope.read(token.scopes)),
        token.createdAt,
        token.expiresAt,
        token.lastUsed);
  }

  /** Remarks at label and scopes. */
  private void check(Wish wish, List<Remark> remarks) {
    checks.label(wish.label(), remarks);
    if (wish.scopes() == null) {
      return;
    }
    boolean unknown =
        wish.scopes().stream().anyMatch(code -> Coded.of(Scope.class, code).isEmpty());
    boolean useless = !wish.scopes().contains("read") && !wish.scopes().contains("write");
    if (unknown || useless) {
      remarks.add(
          Remark.error(
              RemarkId.SCOPES, "/scopes", "Choose read, write or both, and moderate besides."));
    }
  }
}
