package club.emberwell.lot;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Cause;
import club.emberwell.entry.ComesBack;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Returned;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * Keeps count of a member's deliveries, which nobody else sees. Every write is one transaction with
 * its revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class Lots implements Kind, ComesBack {
  private static final ListOrder MINE = ListOrder.newestFirst("lots", LotLimits.PAGE);

  private static final Set<EntryKind> LOTS = Set.of(EntryKind.LOT);
  private static final TypeReference<WrittenLot> SHAPE = new TypeReference<>() {};

  private final LotRepository lots;
  private final EntryLife life;

  Lots(LotRepository lots, EntryLife life) {
    this.lots = lots;
    this.life = life;
  }

  /**
   * A lot that was just stored.
   *
   * @param created false where the same one was there already
   */
  public record Saved(Lot lot, boolean created) {}

  /**
   * Writes a delivery down.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Saved add(Actor actor, LotPosting posting) {
    UUID author = EntryAccess.signedIn(actor);
    WrittenLot written = LotReader.read(posting.written());
    if (life.isThere(posting.id(), EntryKind.LOT, author)) {
      LotEntity there = lots.whole(posting.id()).orElseThrow();
      if (!there.written().equals(written)) {
        throw EntryLife.taken(EntryKind.LOT);
      }
      return new Saved(there.toLot(actor.handle()), false);
    }
    requireRoom(author);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    Instant at = posting.at() == null ? Instant.now() : posting.at();
    NewEntry made = new NewEntry(id, EntryKind.LOT, null, Origin.HERE, at);
    LotEntity lot = new LotEntity(life.begin(actor, made, LotEntity.words(written)), written);
    lots.persistAndFlush(lot);
    return new Saved(lot.toLot(actor.handle()), true);
  }

  /**
   * Writes a lot anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Lot revise(Actor actor, UUID id, int version, WrittenLot written) {
    EntryEntity entry = life.editable(actor, LOTS, id, version);
    WrittenLot read = LotReader.read(written);
    LotEntity lot = lots.whole(id).orElseThrow();
    lot.take(read);
    life.rewritten(entry, LotEntity.words(read), EntryAction.EDITED, Cause.now(actor, null));
    return lot.toLot(actor.handle());
  }

  /** Takes a lot off the list; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, LOTS, id, version);
  }

  /**
   * One of the actor's lots.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Lot get(Actor actor, UUID id) {
    LotEntity lot = lots.whole(id).orElseThrow(() -> new EntryUnknown("lot"));
    EntryAccess.standing(actor, lot.entry());
    return lot.toLot(actor.handle());
  }

  /** The actor's lots that still stand, the last received first. */
  @Transactional
  public Slice<Lot> mine(Actor actor, Part part) {
    UUID owner = EntryAccess.signedIn(actor);
    return Slice.read(part, MINE, place -> lots.standing(owner, place), LotEntity::place)
        .map(lot -> lot.toLot(actor.handle()));
  }

  /**
   * What a standing lot says of its supplier.
   *
   * @param code of the supplier, the same for spellings that differ by case and space alone
   * @param usable of those received
   */
  public record Inspected(String supplier, String code, int received, int usable) {}

  /** The actor's standing lots of one supplier, the last received first; of many the last. */
  @Transactional
  public List<Lot> ofSupplier(Actor actor, String code) {
    return lots.ofSupplier(EntryAccess.signedIn(actor), code, LotLimits.IN_TIME).stream()
        .map(lot -> lot.toLot(actor.handle()))
        .toList();
  }

  /** Those of the actor's standing lots of which it is known how many were usable. */
  @Transactional
  public List<Inspected> inspected(Actor actor) {
    return lots.inspected(EntryAccess.signedIn(actor));
  }

  @Override
  public EntryKind returning() {
    return EntryKind.LOT;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    EntryEntity entry =
        life.comeBack(actor, EntryKind.LOT, from, words -> LotEntity.words(brought(words)));
    lots.persistAndFlush(new LotEntity(entry, brought(from.written())));
  }

  private static WrittenLot brought(String words) {
    return LotReader.read(StoredJson.brought(words, SHAPE));
  }

  private void requireRoom(UUID author) {
    if (lots.countOf(author) >= LotLimits.PER_MEMBER) {
      String detail = "You have as many lots as fit: %d.".formatted(LotLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.LOTS_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return LOTS;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    revise(actor, id, version, StoredJson.read(written, SHAPE));
  }
}
