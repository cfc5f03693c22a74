package club.emberwell.desk.home;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.rule.RuleRepository;
import club.emberwell.entry.Entries;
import club.emberwell.entry.Entry;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.account.Accounts;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

/** What moderators do about members. Mail addresses and roles are not theirs to see or change. */
@ApplicationScoped
public class People {
  private static final ListOrder BY_NAME = ListOrder.oldestFirst("members", DeskLimits.PAGE);
  private static final ListOrder ENTRIES = ListOrder.newestFirst("entries", DeskLimits.PAGE);

  private final Members members;
  private final Accounts accounts;
  private final Entries entries;
  private final RuleRepository rules;
  private final PeopleRepository people;
  private final Audit audit;

  People(
      Members members,
      Accounts accounts,
      Entries entries,
      RuleRepository rules,
      PeopleRepository people,
      Audit audit) {
    this.members = members;
    this.accounts = accounts;
    this.entries = entries;
    this.rules = rules;
    this.people = people;
    this.audit = audit;
  }

  /**
   * A member as moderators see them: no address.
   *
   * @param trusted whether their entries need no first look
   * @param entries how many they have posted and not withdrawn
   * @param lastSeen when they were last signed in or posted; null where nobody knows any more
   */
  public record Person(
      UUID id,
      String handle,
      String role,
      String status,
      Instant joined,
      boolean trusted,
      long entries,
      Instant lastSeen) {
    public boolean banned() {
      return "banned".equals(status);
    }
  }

  /** Members whose name begins with some letters, by name. */
  @Transactional
  public Slice<Person> find(Actor actor, String start, Part part) {
    return find(actor, start, Instant.EPOCH, part);
  }

  /** The same of those who joined since a time. */
  @Transactional
  public Slice<Person> find(Actor actor, String start, Instant since, Part part) {
    DeskAccess.moderates(actor);
    String letters = DeskAccess.text("/q", start, DeskLimits.FILTER, false);
    return Slice.read(
        part,
        BY_NAME,
        place -> people.find(letters == null ? "" : letters, since, place),
        person -> List.of(person.handle().toLowerCase(Locale.ROOT)));
  }

  @Transactional
  public Person one(Actor actor, UUID id) {
    DeskAccess.moderates(actor);
    return people.one(id).orElseThrow(() -> new EntryUnknown("member"));
  }

  /** A member's entries in whatever state, newest first. */
  @Transactional
  public Slice<Entry> entries(Actor actor, UUID id, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(
        part, ENTRIES, place -> entries.of(id, place), e -> List.of(e.times().created(), e.id()));
  }

  /**
   * Shuts a member out at once: every session and token ends.
   *
   * @throws EntryForbidden for oneself, and for moderators and owners unless an owner decides
   */
  @Transactional
  public void ban(Actor actor, UUID id, String reason) {
    MemberView member = subject(actor, id);
    String why = DeskAccess.reason(reason);
    if (member.status() == MemberStatus.ERASED) {
      throw new EntryUnknown("member");
    }
    if (member.status() != MemberStatus.BANNED) {
      accounts.ban(actor, id, why);
    }
  }

  /** Lets a banned member in again. */
  @Transactional
  public void unban(Actor actor, UUID id, String reason) {
    MemberView member = subject(actor, id);
    String why = DeskAccess.reason(reason);
    if (member.status() == MemberStatus.BANNED) {
      accounts.unban(actor, id, why);
    }
  }

  /** Spares a member the first look, or takes that back. */
  @Transactional
  public void trust(Actor actor, UUID id, boolean trusted) {
    subject(actor, id);
    if (trusted) {
      rules.trust(id);
    } else {
      rules.distrust(id);
    }
    audit.record(actor, trusted ? "trust" : "distrust", "member", id.toString(), "", Map.of());
  }

  /** Spares a member the first look who did not come through the door. */
  @Transactional
  public void trustInvented(UUID id) {
    rules.trust(id);
  }

  private MemberView subject(Actor actor, UUID id) {
    DeskAccess.moderates(actor);
    MemberView member = members.byId(id).orElseThrow(() -> new EntryUnknown("member"));
    DeskAccess.above(actor, member);
    return member;
  }
}
