package club.emberwell.member.door;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Admissions.Terms;
import club.emberwell.member.mail.MailOutbox;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Accounts that wait at the door until a moderator says yes or no. */
@ApplicationScoped
public class JoinRequests {
  private static final String ENTITY = "member";
  private static final int PAGE = 100;

  /** Characters of what somebody says who asks to come in. */
  private static final int TEXT_MAX = 1000;

  private final JoinRequestRepository rows;
  private final MemberRepository members;
  private final Members everybody;
  private final Admissions admissions;
  private final ClubOptions club;
  private final MailOutbox mail;
  private final Audit audit;

  JoinRequests(
      JoinRequestRepository rows,
      MemberRepository members,
      Members everybody,
      Admissions admissions,
      ClubOptions club,
      MailOutbox mail,
      Audit audit) {
    this.rows = rows;
    this.members = members;
    this.everybody = everybody;
    this.admissions = admissions;
    this.club = club;
    this.mail = mail;
    this.audit = audit;
  }

  /** Somebody who waits. */
  public record Waiting(UUID member, String handle, String text, Instant askedAt) {}

  /**
   * Makes an account that waits.
   *
   * @param text what the person says about themselves
   */
  MemberView ask(NewMember entry, String text, String addressPrefix) {
    return admissions.join(entry, addressPrefix, terms(text), remarks(text));
  }

  public List<Remark> remarks(String text) {
    List<Remark> remarks = new ArrayList<>();
    MemberChecks.text(text, "/request", 1, TEXT_MAX, true, remarks);
    return remarks;
  }

  public Terms terms(String text) {
    return new Terms(
        Role.MEMBER,
        MemberStatus.WAITING,
        "ask-to-join",
        Map.of(),
        Optional::empty,
        member -> store(member.id, text.strip()));
  }

  private void store(UUID member, String text) {
    JoinRequest request = new JoinRequest();
    request.memberId = member;
    request.text = text;
    request.askedAt = Instant.now();
    rows.persist(request);
  }

  /** Those who wait, oldest first, at most a page. */
  @Transactional
  public List<Waiting> waiting() {
    List<JoinRequest> found = rows.waiting(PAGE);
    Map<UUID, String> names = everybody.labels(found.stream().map(r -> r.memberId).toList());
    return found.stream()
        .map(r -> new Waiting(r.memberId, names.get(r.memberId), r.text, r.askedAt))
        .toList();
  }

  /**
   * Says yes or no.
   *
   * @param reason for the person; needed for a no
   * @throws EntryRefused for a reason at fault
   * @throws EntryUnknown when nobody waits under this id (any more)
   */
  @Transactional
  public void decide(Actor actor, UUID id, boolean accept, String reason) {
    List<Remark> remarks = new ArrayList<>();
    MemberChecks.text(reason, "/reason", accept ? 0 : 1, MemberLimits.REASON_MAX, true, remarks);
    Remarks.refuse(remarks);
    JoinRequest request = rows.findById(id, LockModeType.PESSIMISTIC_WRITE);
    if (request == null || request.decidedAt != null) {
      throw new EntryUnknown("request");
    }
    String why = reason == null ? "" : reason.strip();
    request.decidedAt = Instant.now();
    request.accepted = accept;
    request.reason = why;
    Member member = members.findById(id);
    if (accept) {
      member.status = MemberStatus.ACTIVE;
    }
    audit.record(actor, accept ? "let-in" : "turn-away", ENTITY, id.toString(), why, Map.of());
    tell(member, accept, why);
  }

  private void tell(Member member, boolean accept, String why) {
    String said = why.isEmpty() ? "" : "\n\nThe moderator says: " + why;
    String text =
        accept
            ? "You are a member now and can sign in as " + member.handle + "." + said
            : "A moderator has declined your request to join." + said;
    mail.queueUnproved(member, "request", accept ? "You are in" : "Your request to join", text);
  }
}
