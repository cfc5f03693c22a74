package club.emberwell.desk.flag;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entries;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Members say what is wrong; whoever owns the reason answers them. */
@ApplicationScoped
public class Flags {
  private static final ListOrder MINE = ListOrder.newestFirst("own-flags", DeskLimits.PAGE);
  private static final ListOrder OPEN = ListOrder.oldestFirst("flags", DeskLimits.PAGE);

  private final FlagRepository flags;
  private final Entries entries;
  private final EntryLife life;
  private final Audit audit;

  Flags(FlagRepository flags, Entries entries, EntryLife life, Audit audit) {
    this.flags = flags;
    this.entries = entries;
    this.life = life;
    this.audit = audit;
  }

  /**
   * Flags an item that everybody sees. The same member's open flag on it is answered again.
   *
   * @param reason code of a {@link FlagReason}
   * @param note for moderators, or null
   * @throws EntryUnknown where the item must not be known
   * @throws EntryForbidden for one's own item
   * @throws EntryRefused for an unknown reason, too many flags, or one that was settled already
   */
  @Transactional
  public Flag flag(Actor actor, EntryRef ref, String reason, String note) {
    return flag(actor, ref, new Raised(reason, note, Instant.now()));
  }

  /**
   * What somebody says is wrong.
   *
   * @param reason code of a {@link FlagReason}
   * @param note for moderators, or null
   */
  public record Raised(String reason, String note, Instant at) {}

  /** The same at a time. */
  @Transactional
  public Flag flag(Actor actor, EntryRef ref, Raised raised) {
    UUID member = DeskAccess.signedIn(actor);
    FlagReason why = reason(raised.reason());
    String text = DeskAccess.text("/note", raised.note(), DeskLimits.NOTE, false);
    Entry item = entries.get(ref);
    if (actor.is(item.author().id())) {
      throw new EntryForbidden(
          EntryForbidden.Why.YOUR_OWN, "This is your own: edit or withdraw it instead.");
    }
    if (!item.live()) {
      throw new EntryUnknown(ref.kind().code());
    }
    var before = flags.find(member, ref);
    if (before.isPresent() && before.get().open()) {
      return before.get();
    }
    if (before.isPresent() && !before.get().state().equals("withdrawn")) {
      throw new EntryRefused(
          RemarkId.FLAG_SETTLED, "", "Your flag was answered: " + before.get().outcome());
    }
    keepCount(member, raised.at());
    flags.open(member, ref, why, text, raised.at());
    return flags.find(member, ref).orElseThrow();
  }

  private static FlagReason reason(String code) {
    String all =
        Arrays.stream(FlagReason.values()).map(FlagReason::code).collect(Collectors.joining(", "));
    return Coded.of(FlagReason.class, code)
        .orElseThrow(
            () ->
                new EntryRefused(
                    RemarkId.CHOICE_UNKNOWN, "/reason", "Choose one of: " + all + "."));
  }

  private void keepCount(UUID member, Instant now) {
    FlagRepository.Counts counts = flags.counts(member, now.minus(DeskLimits.FLAG_WINDOW));
    if (counts.open() >= DeskLimits.OPEN_FLAGS) {
      throw new EntryRefused(
          RemarkId.FLAGS_OPEN,
          "",
          "You have " + counts.open() + " open flags. Wait until some are answered.");
    }
    if (counts.fresh() >= DeskLimits.FLAGS) {
      throw new EntryRefused(
          RemarkId.FLAGS_TODAY, "", "That is the limit for one day. Continue tomorrow.");
    }
  }

  /** Takes back one's own open flag. */
  @Transactional
  public void withdraw(Actor actor, UUID id) {
    if (!flags.withdraw(DeskAccess.signedIn(actor), id)) {
      throw new EntryUnknown("open flag of yours");
    }
  }

  /** The actor's own flags with what came of them, newest first. */
  @Transactional
  public Slice<Flag> mine(Actor actor, Part part) {
    UUID member = DeskAccess.signedIn(actor);
    return Slice.read(
        part, MINE, place -> flags.of(member, place), flag -> List.of(flag.createdAt(), flag.id()));
  }

  /** What moderators answered lately to the actor's flags, the last answer first. */
  @Transactional
  public List<Flag> answered(Actor actor, int most) {
    UUID member = DeskAccess.signedIn(actor);
    return flags.answered(member, Instant.now().minus(DeskLimits.ANSWERED), most);
  }

  /** Items with open flags, the longest flagged first. */
  @Transactional
  public Slice<Flagged> open(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(
        part, OPEN, flags::open, flagged -> List.of(flagged.oldest(), flagged.item().id()));
  }

  /** The open flags on one item. */
  @Transactional
  public List<Flag> on(Actor actor, EntryRef ref) {
    DeskAccess.moderates(actor);
    return flags.openOn(ref, DeskLimits.PAGE);
  }

  /**
   * Answers the open flags on an item as far as the actor's role settles them.
   *
   * @param upheld whether they were right
   * @param action what happens to the item besides, or null
   * @param reason for those who flagged it, and for its author where something happens
   * @return how many were settled
   * @throws EntryForbidden on one's own item, and where only flags for owners are left
   */
  @Transactional
  public int settle(Actor actor, EntryRef ref, boolean upheld, Decision action, String reason) {
    DeskAccess.moderates(actor);
    String why = DeskAccess.reason(reason);
    Entry item = entries.get(ref);
    DeskAccess.notOwn(actor, item.author().id());
    List<Flag> open = flags.openOn(ref, DeskLimits.PAGE);
    if (open.isEmpty()) {
      throw new EntryUnknown("open flag on this");
    }
    if (action != null) {
      life.decide(actor, ref, action, why);
    }
    List<FlagReason> may =
        Stream.of(FlagReason.values()).filter(r -> actor.role().atLeast(r.owner())).toList();
    String state = upheld ? "upheld" : "dismissed";
    int settled = flags.settle(ref, may, state, new Flag.Settled(Instant.now(), why));
    if (settled == 0 && action == null) {
      throw new EntryForbidden(
          EntryForbidden.Why.ROLE, "Only an owner answers flags for this reason.");
    }
    Map<String, Object> detail = Map.of("outcome", state, "flags", settled);
    audit.record(actor, "settle-flags", ref.kind().code(), ref.id().toString(), why, detail);
    return settled;
  }
}
