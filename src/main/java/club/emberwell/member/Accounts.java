package club.emberwell.member;

import club.emberwell.member.Admissions.Terms;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.text.Normalizer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Makes accounts and changes them. */
@ApplicationScoped
public class Accounts {
  private static final String SIGN_UP_ADDRESS = "sign-up-address";
  private static final String ENTITY = "member";

  private final MemberRepository members;
  private final Admissions admissions;
  private final MemberChecks checks;
  private final PasswordRules passwordRules;
  private final Passwords passwords;
  private final AttemptRepository throttle;
  private final MemberLimits limits;
  private final ClubSettings club;
  private final Audit audit;
  private final Sessions sessions;
  private final Tokens tokens;

  Accounts(
      MemberRepository members,
      Admissions admissions,
      MemberChecks checks,
      PasswordRules passwordRules,
      Passwords passwords,
      AttemptRepository throttle,
      MemberLimits limits,
      ClubSettings club,
      Audit audit,
      Sessions sessions,
      Tokens tokens) {
    this.members = members;
    this.admissions = admissions;
    this.checks = checks;
    this.passwordRules = passwordRules;
    this.passwords = passwords;
    this.throttle = throttle;
    this.limits = limits;
    this.club = club;
    this.audit = audit;
    this.sessions = sessions;
    this.tokens = tokens;
  }

  /**
   * What a person enters to become a member.
   *
   * @param email null or empty for none
   */
  public record NewMember(String handle, String email, String password) {
    /** Unicode in one form, so that equal names compare equal. */
    NewMember normal() {
      return new NewMember(nfkc(handle), nfkc(email), password);
    }

    private static String nfkc(String text) {
      return text == null ? null : Normalizer.normalize(text, Normalizer.Form.NFKC).strip();
    }
  }

  /**
   * Signs a stranger up where the club's door is open.
   *
   * @param addressPrefix the network the request came from
   */
  public Outcome<MemberView> register(NewMember entry, String addressPrefix) {
    if (club.door() != ClubSettings.Door.OPEN) {
      return new Outcome.Denied<>("This club takes new members by invitation or on request only.");
    }
    return join(entry, addressPrefix, Terms.of(Role.MEMBER), List.of());
  }

  /**
   * Signs a stranger up on some terms, throttled by address.
   *
   * @param more what is wrong besides, at fields of the door itself
   */
  Outcome<MemberView> join(NewMember entry, String addressPrefix, Terms terms, List<Remark> more) {
    NewMember normal = entry.normal();
    List<Remark> remarks = new ArrayList<>(admissions.remarks(normal));
    remarks.addAll(more);
    if (!remarks.isEmpty()) {
      return new Outcome.Refused<>(remarks);
    }
    Optional<Duration> wait =
        throttle.claim(SIGN_UP_ADDRESS, addressPrefix, limits.signUpAddress());
    return wait.<Outcome<MemberView>>map(Outcome.Throttled::new)
        .orElseGet(() -> admissions.admit(normal, terms));
  }

  /** Adds a member from the club's own side: same checks, but neither door nor throttle. */
  public Outcome<MemberView> enrol(NewMember entry, Role role) {
    NewMember normal = entry.normal();
    List<Remark> remarks = admissions.remarks(normal);
    return remarks.isEmpty()
        ? admissions.admit(normal, Terms.of(role))
        : new Outcome.Refused<>(remarks);
  }

  /**
   * Changes a password and ends every other session.
   *
   * @param keep the session to spare; null ends all
   */
  public Outcome<MemberView> changePassword(
      Actor actor, String current, String fresh, UUID keep, String addressPrefix) {
    MemberView member =
        QuarkusTransaction.requiringNew()
            .call(() -> Members.view(members.findById(actor.memberId())));
    Optional<Remark> remark = passwordRules.check(fresh, "/password", member.handle());
    if (remark.isPresent()) {
      return Outcome.refused(remark.get());
    }
    Outcome<UUID> proof = sessions.prove(member.handle(), current, addressPrefix);
    if (!(proof instanceof Outcome.Done<UUID>)) {
      return Outcome.recast(proof);
    }
    String hash = passwords.hash(PasswordRules.normal(fresh));
    return QuarkusTransaction.requiringNew().call(() -> storePassword(actor, hash, keep));
  }

  private Outcome<MemberView> storePassword(Actor actor, String hash, UUID keep) {
    Member stored = members.findById(actor.memberId());
    stored.passwordHash = hash;
    sessions.endAll(stored.id, keep);
    audit.record(actor, "change-password", ENTITY, stored.id.toString(), "", Map.of());
    members.flush();
    return new Outcome.Done<>(Members.view(stored));
  }

  /**
   * Replaces how a member reads and writes numbers.
   *
   * @param style any, point or comma
   * @param units dimension name -> UCUM code
   * @param version the version that was read, for If-Match
   * @throws EntryChanged when the account changed since
   */
  @Transactional
  public Outcome<MemberView> prefer(
      Actor actor, String style, Map<String, String> units, long version) {
    List<Remark> remarks = new ArrayList<>();
    Optional<NumberStyle> read = style == null ? Optional.empty() : NumberStyles.of(style);
    if (read.isEmpty()) {
      remarks.add(
          Remark.error(
              RemarkId.NUMBER_STYLE_UNKNOWN, "/numberStyle", "Choose any, point or comma."));
    }
    Map<QuantityKind, String> chosen = units == null ? Map.of() : checks.units(units, remarks);
    if (!remarks.isEmpty()) {
      return new Outcome.Refused<>(remarks);
    }
    Member member = members.findById(actor.memberId());
    if (member.version != version) {
      throw new EntryChanged((int) member.version);
    }
    member.numberStyle = NumberStyles.code(read.get());
    member.units = new UnitPreferences(chosen).toMap();
    members.flush();
    return new Outcome.Done<>(Members.view(member));
  }

  /**
   * Shuts a member out at once: sessions and tokens end.
   *
   * @throws EntryForbidden for the last owner
   */
  @Transactional
  public void ban(Actor actor, UUID id, String reason) {
    requireAnotherOwner(id);
    setStatus(actor, id, MemberStatus.BANNED, "ban", reason);
    sessions.endAll(id, null);
    tokens.revokeAll(id);
  }

  /** Lets a member in again; old sessions and tokens stay ended. */
  @Transactional
  public void unban(Actor actor, UUID id, String reason) {
    setStatus(actor, id, MemberStatus.ACTIVE, "unban", reason);
  }

  /**
   * Gives a member another role; sessions go on with the new one.
   *
   * @throws EntryForbidden when the last owner would go
   */
  @Transactional
  public void changeRole(Actor actor, UUID id, Role role, String reason) {
    if (role != Role.OWNER) {
      requireAnotherOwner(id);
    }
    Member member = members.findById(id);
    String before = member.role;
    if (before.equals(role.code())) {
      return;
    }
    member.role = role.code();
    audit.record(
        actor,
        "change-role",
        ENTITY,
        id.toString(),
        reason,
        Map.of("from", before, "to", member.role));
  }

  private void setStatus(Actor actor, UUID id, MemberStatus status, String action, String reason) {
    Member member = members.findById(id);
    member.status = status.code();
    audit.record(actor, action, ENTITY, id.toString(), reason, Map.of());
  }

  /** A club without an owner could not be put right from within. */
  private void requireAnotherOwner(UUID leaving) {
    List<UUID> owners = members.lockedOwners();
    if (owners.equals(List.of(leaving))) {
      throw new EntryForbidden("This is the club's only owner; make another one first.");
    }
  }
}
