package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Licence;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Tokens;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Changes accounts: how a member reads numbers, what a member may do, whether at all. */
@ApplicationScoped
public class Accounts {
  private static final String ENTITY = "member";

  private final MemberRepository members;
  private final MemberChecks checks;
  private final Audit audit;
  private final Proof proof;
  private final Sessions sessions;
  private final Tokens tokens;

  Accounts(
      MemberRepository members,
      MemberChecks checks,
      Audit audit,
      Proof proof,
      Sessions sessions,
      Tokens tokens) {
    this.members = members;
    this.checks = checks;
    this.audit = audit;
    this.proof = proof;
    this.sessions = sessions;
    this.tokens = tokens;
  }

  /**
   * How a member reads and writes numbers, and shares.
   *
   * @param style any, point or comma
   * @param units kind name -> UCUM code; null = canonical ones
   * @param licence SPDX id; null or empty = what the club decided
   * @param named whether data that leave the club name the member as author; null = they do
   */
  public record Wish(String style, Map<String, String> units, String licence, Boolean named) {
    /** What a member chose so far. */
    public static Wish of(MemberView member) {
      Licence chosen = member.sharing().licence();
      return new Wish(
          member.units().style().code(),
          member.units().toMap(),
          chosen == null ? null : chosen.code(),
          member.sharing().named());
    }

    private boolean asTheClub() {
      return licence == null || licence.isEmpty();
    }
  }

  /**
   * Replaces what a member prefers. What was posted before keeps its licence.
   *
   * @param version the version that was read, for If-Match
   * @throws EntryChanged when the account changed since
   */
  @Transactional
  public MemberView prefer(Actor actor, Wish wish, long version) {
    List<Remark> remarks = new ArrayList<>();
    Optional<NumberStyle> read = Coded.of(NumberStyle.class, wish.style());
    if (read.isEmpty()) {
      remarks.add(
          Remark.error(
              RemarkId.NUMBER_STYLE_UNKNOWN, "/numberStyle", "Choose any, point or comma."));
    }
    Map<QuantityKind, String> chosen =
        wish.units() == null ? Map.of() : checks.units(wish.units(), remarks);
    Optional<Licence> licence = Coded.of(Licence.class, wish.licence());
    if (!wish.asTheClub() && licence.isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.LICENCE_UNKNOWN, "/licence", "Choose " + Licence.codes() + "."));
    }
    Remarks.refuse(remarks);
    Member member = members.findById(actor.memberId());
    if (member.version != version) {
      throw new EntryChanged((int) member.version);
    }
    member.numberStyle = read.get();
    member.units = new UnitPreferences(chosen).toMap();
    member.licence = licence.orElse(null);
    member.named = !Boolean.FALSE.equals(wish.named());
    members.flush();
    return Members.view(member);
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
    sessions.endAll(id);
    tokens.revokeAll(id);
  }

  /** Lets a member in again; old sessions and tokens stay ended. */
  @Transactional
  public void unban(Actor actor, UUID id, String reason) {
    setStatus(actor, id, MemberStatus.ACTIVE, "unban", reason);
  }

  /**
   * Who is to have which role.
   *
   * @param role member, moderator or owner
   */
  public record Appointment(String handle, String role, String reason) {}

  /**
   * Gives somebody another role. Ownership is given and taken by somebody who is truly an owner.
   *
   * @throws EntryForbidden when the last owner would go
   */
  public MemberView appoint(Actor owner, Appointment wanted, Given given) {
    Appointed appointed = QuarkusTransaction.requiringNew().call(() -> read(wanted));
    if (appointed.role() == Role.OWNER || appointed.before() == Role.OWNER) {
      proof.recent(owner, given);
    }
    return QuarkusTransaction.requiringNew()
        .call(
            () -> {
              changeRole(owner, appointed.id(), appointed.role(), wanted.reason().strip());
              return Members.view(members.findById(appointed.id()));
            });
  }

  private record Appointed(UUID id, Role before, Role role) {}

  private Appointed read(Appointment appointment) {
    String handle = appointment.handle();
    String role = appointment.role();
    String reason = appointment.reason();
    List<Remark> remarks = new ArrayList<>();
    Optional<Role> wanted = Coded.of(Role.class, role).filter(r -> r.atLeast(Role.MEMBER));
    if (wanted.isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.ROLE_UNKNOWN, "/role", "Choose member, moderator or owner."));
    }
    MemberChecks.text(reason, "/reason", 1, MemberLimits.REASON_MAX, true, remarks);
    Optional<Member> member =
        members.byHandle(handle == null ? "" : handle.strip()).filter(Member::active);
    if (member.isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.MEMBER_UNKNOWN, "/handle", "No active member here has this name."));
    }
    Remarks.refuse(remarks);
    return new Appointed(member.get().id, member.get().role, wanted.get());
  }

  /**
   * Gives a member another role. Browsers get another secret with their next page; tokens keep no
   * more than the lower of the two roles had a use for.
   *
   * @throws EntryForbidden when the last owner would go
   */
  @Transactional
  public void changeRole(Actor actor, UUID id, Role role, String reason) {
    if (role != Role.OWNER) {
      requireAnotherOwner(id);
    }
    Member member = members.findById(id);
    Role before = member.role;
    if (before == role) {
      return;
    }
    member.role = role;
    sessions.renewAll(id);
    if (before == Role.MEMBER || role == Role.MEMBER) {
      tokens.lessen(id);
    }
    audit.record(
        actor,
        "change-role",
        ENTITY,
        id.toString(),
        reason,
        Map.of("from", before.code(), "to", role.code()));
  }

  private void setStatus(Actor actor, UUID id, MemberStatus status, String action, String reason) {
    Member member = members.findById(id);
    member.status = status;
    audit.record(actor, action, ENTITY, id.toString(), reason, Map.of());
  }

  /** A club without an owner could not be put right from within. */
  private void requireAnotherOwner(UUID leaving) {
    List<UUID> owners = members.lockedOwners();
    if (owners.equals(List.of(leaving))) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE,
          "This is the only owner of the club. Make somebody else an owner first.");
    }
  }
}
