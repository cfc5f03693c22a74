package club.emberwell.member.door;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Members.Named;
import club.emberwell.member.Role;
import club.emberwell.member.Secrets;
import club.emberwell.member.door.Admissions.Terms;
import club.emberwell.member.pace.Throttle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Links that let people in: counted, ending by themselves, and ended by moderators. */
@ApplicationScoped
public class Invitations {
  private static final String ENTITY = "invitation";
  private static final int PAGE = 100;
  private static final int NOTE_MAX = 120;
  private static final String TRIED = "invitation-address";
  private static final String MADE = "invite";

  private final InvitationRepository rows;
  private final Members members;
  private final Admissions admissions;
  private final Throttle throttle;
  private final DoorLimits limits;
  private final Audit audit;

  Invitations(
      InvitationRepository rows,
      Members members,
      Admissions admissions,
      Throttle throttle,
      DoorLimits limits,
      Audit audit) {
    this.rows = rows;
    this.members = members;
    this.admissions = admissions;
    this.throttle = throttle;
    this.limits = limits;
    this.audit = audit;
  }

  /**
   * What a moderator asks for.
   *
   * @param note for whom or where it is; may be null
   * @param uses how many people it lets in; null = one
   * @param days how long it works; null = the default
   */
  public record Draft(String note, Integer uses, Integer days) {}

  /**
   * A fresh invitation.
   *
   * @param code the only time it is seen
   */
  public record Fresh(UUID id, String code, int uses, Instant expires) {}

  /**
   * An invitation as moderators see it.
   *
   * @param works whether somebody could still come in by it
   */
  public record View(
      UUID id,
      Named by,
      String note,
      Uses counted,
      Instant createdAt,
      Instant expires,
      Instant revokedAt,
      boolean works) {}

  /** How many people it lets in, and how many it has let in. */
  public record Uses(int uses, int used) {}

  /** Makes an invitation. */
  public Fresh make(Actor actor, Draft draft) {
    List<Remark> remarks = new ArrayList<>();
    int uses = draft.uses() == null ? 1 : draft.uses();
    int days = draft.days() == null ? limits.invitationDays() : draft.days();
    between(uses, limits.invitationUsesMax(), "/uses", remarks);
    between(days, limits.invitationDaysMax(), "/days", remarks);
    MemberChecks.text(draft.note(), "/note", 0, NOTE_MAX, false, remarks);
    Remarks.refuse(remarks);
    throttle.claim(MADE, actor.memberId().toString(), limits.invite());
    return QuarkusTransaction.requiringNew().call(() -> store(actor, draft, uses, days));
  }

  private static void between(int value, int most, String pointer, List<Remark> remarks) {
    if (value < 1 || value > most) {
      remarks.add(
          Remark.error(RemarkId.OUT_OF_RANGE, pointer, "Choose a number from 1 to " + most + "."));
    }
  }

  private Fresh store(Actor actor, Draft draft, int uses, int days) {
    Instant now = Instant.now();
    long open =
        rows.count(
            "memberId = ?1 and revokedAt is null and expiresAt > ?2 and used < most",
            actor.memberId(),
            now);
    if (open >= limits.invitationsOpenMax()) {
      throw new EntryRefused(
          RemarkId.INVITATIONS_MANY,
          "",
          "You have "
              + limits.invitationsOpenMax()
              + " open invitations, which is the limit. Revoke one first.");
    }
    String code = Secrets.random();
    Invitation invitation = new Invitation();
    invitation.id = UUID.randomUUID();
    invitation.codeHash = Secrets.sha256(code);
    invitation.memberId = actor.memberId();
    invitation.note = draft.note() == null ? "" : draft.note().strip();
    invitation.most = uses;
    invitation.createdAt = now;
    invitation.expiresAt = now.plus(days, ChronoUnit.DAYS);
    rows.persist(invitation);
    audit.record(
        actor, "invite", ENTITY, invitation.id.toString(), "", Map.of("uses", uses, "days", days));
    return new Fresh(invitation.id, code, uses, invitation.expiresAt);
  }

  /** The latest, newest first. */
  @Transactional
  public List<View> latest() {
    List<Invitation> found = rows.find("order by createdAt desc").page(0, PAGE).list();
    Map<UUID, String> names =
        members.labels(found.stream().map(i -> i.memberId).distinct().toList());
    Instant now = Instant.now();
    return found.stream().map(i -> view(i, names, now)).toList();
  }

  private static View view(Invitation i, Map<UUID, String> names, Instant now) {
    return new View(
        i.id,
        new Named(i.memberId, names.getOrDefault(i.memberId, Members.FORMER)),
        i.note,
        new Uses(i.most, i.used),
        i.createdAt,
        i.expiresAt,
        i.revokedAt,
        i.works(now));
  }

  /** Ends an invitation; those who came in by it stay. False if it is none or ended already. */
  @Transactional
  public boolean revoke(Actor actor, UUID id) {
    boolean ended =
        rows.update("revokedAt = ?1 where id = ?2 and revokedAt is null", Instant.now(), id) == 1;
    if (ended) {
      audit.record(actor, "end-invitation", ENTITY, id.toString(), "", Map.of());
    }
    return ended;
  }

  /** Signs somebody up by invitation, however the door stands. */
  public MemberView accept(String code, NewMember entry, String addressPrefix) {
    return admissions.join(entry, addressPrefix, terms(find(code, addressPrefix)), List.of());
  }

  /**
   * The invitation of a code that opens the door right now. Throttled, so that codes cannot be
   * tried out.
   *
   * @throws EntryRefused where it opens nothing (any more)
   */
  public UUID find(String code, String addressPrefix) {
    return findHashed(hash(code), addressPrefix);
  }

  /** What stands in the database of a code. */
  public static byte[] hash(String code) {
    return Secrets.sha256(code == null ? "" : code.strip());
  }

  /** The same by what its code hashes to. */
  public UUID findHashed(byte[] codeHash, String addressPrefix) {
    throttle.claim(TRIED, addressPrefix, limits.codeAddress());
    UUID id =
        QuarkusTransaction.requiringNew()
            .call(() -> rows.byCode(codeHash).filter(i -> i.works(Instant.now())).map(i -> i.id))
            .orElseThrow(() -> new EntryRefused(over()));
    throttle.giveBack(TRIED, addressPrefix);
    return id;
  }

  public Terms terms(UUID invitation) {
    return new Terms(
        Role.MEMBER,
        MemberStatus.ACTIVE,
        "join",
        Map.of("invitation", invitation.toString()),
        () -> rows.take(invitation, Instant.now()) ? Optional.empty() : Optional.of(over()),
        member -> {});
  }

  private static Remark over() {
    return Remark.error(
        RemarkId.INVITATION_OVER,
        "/invitation",
        "This invitation is used up, too old or wrong. Ask the person who sent it for another.");
  }
}
