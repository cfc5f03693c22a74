package club.emberwell.desk.rule;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** How the rules are set and what they noticed. */
@ApplicationScoped
public class Rules {
  private static final ListOrder OPEN = ListOrder.newestFirst("notes", DeskLimits.PAGE);
  private static final ListOrder GROUPS = ListOrder.newestFirst("note-groups", DeskLimits.PAGE);
  private static final ListOrder LOG = ListOrder.newestFirst("rule-log", DeskLimits.PAGE);

  private static final List<String> MODES = List.of(Rule.OFF, Rule.NOTE, Rule.HOLD);
  private static final double MOST = 1000;
  private static final int LONGEST = 30 * 24 * 60;

  private final RuleRepository rules;
  private final NoteGroupRepository groups;
  private final Audit audit;

  Rules(RuleRepository rules, NoteGroupRepository groups, Audit audit) {
    this.rules = rules;
    this.groups = groups;
    this.audit = audit;
  }

  @Transactional
  public List<Rule> all(Actor actor) {
    DeskAccess.moderates(actor);
    return rules.all();
  }

  @Transactional
  public Rule one(Actor actor, String code) {
    return all(actor).stream()
        .filter(r -> r.code().code().equals(code))
        .findFirst()
        .orElseThrow(() -> new EntryUnknown("rule"));
  }

  /**
   * Sets a rule.
   *
   * @param threshold in the rule's own count; 0 to 1000
   * @param minutes the time it looks back; ignored where it does not
   * @param version that was read
   */
  @Transactional
  public Rule set(
      Actor actor, String code, String mode, Double threshold, Integer minutes, int version) {
    Rule was = one(actor, code);
    int looksBack = was.code().minutes() == 0 ? 0 : minutes == null ? was.minutes() : minutes;
    check(was.code(), mode, threshold, looksBack);
    if (was.version() != version) {
      throw new EntryChanged(was.version());
    }
    Rule next =
        new Rule(was.code(), mode, threshold, looksBack, version, was.changedAt(), was.notes());
    if (!rules.set(next, Instant.now())) {
      throw new EntryChanged(version + 1);
    }
    Map<String, Object> detail =
        Map.of("mode", mode, "threshold", threshold, "minutes", looksBack, "was", was.mode());
    audit.record(actor, "set-rule", "rule", code, "", detail);
    return one(actor, code);
  }

  private static void check(RuleCode code, String mode, Double threshold, int minutes) {
    List<Remark> remarks = new ArrayList<>();
    boolean first = code == RuleCode.FIRST_LOOK;
    if (mode == null || !MODES.contains(mode) || first && mode.equals(Rule.NOTE)) {
      String words = first ? "off, hold" : "off, note, hold";
      remarks.add(Remark.error(RemarkId.CHOICE_UNKNOWN, "/mode", "Choose one of: " + words + "."));
    }
    double most = first ? DeskLimits.FIRST_LOOK_MOST : MOST;
    if (threshold == null || !(threshold >= 0 && threshold <= most)) {
      remarks.add(
          Remark.error(
              RemarkId.OUT_OF_RANGE,
              "/threshold",
              "A number from 0 to " + (int) most + " fits here."));
    }
    if (code.minutes() > 0 && (minutes < 1 || minutes > LONGEST)) {
      remarks.add(
          Remark.error(
              RemarkId.OUT_OF_RANGE, "/minutes", "From 1 minute to " + LONGEST + " fit here."));
    }
    Remarks.refuse(remarks);
  }

  /** What rules noticed and nobody has looked at yet, newest first. */
  @Transactional
  public Slice<RuleNote> open(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(part, OPEN, rules::open, note -> List.of(note.id()));
  }

  /** The same by rule and member, those with the newest notes first. */
  @Transactional
  public Slice<NoteGroup> groups(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(part, GROUPS, groups::open, group -> List.of(group.latest()));
  }

  /** Open notes of one rule about one member's entries, newest first. */
  @Transactional
  public List<RuleNote> group(Actor actor, RuleCode rule, UUID member) {
    DeskAccess.moderates(actor);
    return rules.openOf(rule, member, DeskLimits.GROUP);
  }

  /** Everything a rule noticed, newest first. */
  @Transactional
  public Slice<RuleNote> log(Actor actor, String code, Part part) {
    Rule rule = one(actor, code);
    return Slice.read(
        part, LOG, place -> rules.log(rule.code(), place), note -> List.of(note.id()));
  }

  /** What rules noticed about an item. */
  @Transactional
  public List<RuleNote> on(Actor actor, EntryRef ref) {
    DeskAccess.moderates(actor);
    return rules.on(ref);
  }

  /** Lays aside what rules noticed about an entry; answers how many. */
  @Transactional
  public int seenOn(Actor actor, EntryRef ref) {
    DeskAccess.moderates(actor);
    return rules.seenOn(ref, DeskAccess.signedIn(actor));
  }

  /** Lays a note aside. */
  @Transactional
  public void seen(Actor actor, long id) {
    DeskAccess.moderates(actor);
    if (!rules.seen(id, DeskAccess.signedIn(actor))) {
      throw new EntryUnknown("open note");
    }
  }
}
