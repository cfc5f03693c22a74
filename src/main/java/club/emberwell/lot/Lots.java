package club.emberwell.lot;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.own.OwnEntries;
import club.emberwell.entry.own.OwnRows;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;

/** Keeps count of a member's deliveries, which nobody else sees. */
@ApplicationScoped
public class Lots extends OwnEntries<WrittenLot, LotEntity, Lot> {
  private static final ListOrder MINE = ListOrder.newestFirst("lots", LotLimits.PAGE);

  private static final Most MOST = new Most(LotLimits.PER_MEMBER, "lots", RemarkId.LOTS_MANY);
  private static final TypeReference<WrittenLot> SHAPE = new TypeReference<>() {};

  private final LotRepository lots;

  Lots(LotRepository lots) {
    this.lots = lots;
  }

  /**
   * Writes a delivery down.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Stored<Lot> add(Actor actor, LotPosting posting) {
    return added(actor, posting.id(), posting.at(), LotReader.read(posting.written()));
  }

  /**
   * Writes a lot anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Lot revise(Actor actor, UUID id, int version, WrittenLot written) {
    return revised(actor, id, version, () -> LotReader.read(written));
  }

  /** The actor's lots that still stand, the last received first. */
  @Transactional
  public Slice<Lot> mine(Actor actor, Part part) {
    UUID owner = EntryAccess.signedIn(actor);
    return Slice.read(part, MINE, place -> lots.standing(owner, place), LotEntity::place)
        .map(lot -> lot.detached(actor.handle()));
  }

  /**
   * What a standing lot says of its supplier.
   *
   * @param code of the supplier, the same for all its spellings
   * @param usable of those received
   */
  public record Inspected(String supplier, String code, int received, int usable) {}

  /** The actor's standing lots of one's supplier, the last received first; of many the last. */
  @Transactional
  public List<Lot> ofSameSupplier(Actor actor, UUID id) {
    return lots.ofSameSupplier(EntryAccess.signedIn(actor), id, LotLimits.IN_TIME).stream()
        .map(lot -> lot.detached(actor.handle()))
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
  protected OwnRows<LotEntity> rows() {
    return lots;
  }

  @Override
  protected WrittenLot read(String stored, NumberStyle style) {
    return LotReader.read(StoredJson.brought(stored, SHAPE));
  }

  @Override
  protected LotEntity row(EntryEntity entry, WrittenLot read) {
    return new LotEntity(entry, read);
  }

  @Override
  protected Most most() {
    return MOST;
  }
}
