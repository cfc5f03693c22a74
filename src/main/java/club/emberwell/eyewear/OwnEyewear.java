package club.emberwell.eyewear;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.own.OwnEntries;
import club.emberwell.entry.own.OwnRows;
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

/** Keeps a member's glasses, which nobody else sees. */
@ApplicationScoped
public class OwnEyewear extends OwnEntries<WrittenGlasses, GlassesEntity, Glasses> {
  private static final Most MOST =
      new Most(EyewearLimits.PER_MEMBER, "glasses", RemarkId.EYEWEAR_MANY);
  private static final TypeReference<WrittenGlasses> SHAPE = new TypeReference<>() {};

  private final GlassesRepository pairs;

  OwnEyewear(GlassesRepository pairs) {
    this.pairs = pairs;
  }

  /**
   * Writes a pair down.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Glasses add(Actor actor, GlassesPosting posting) {
    return added(actor, posting.id(), null, GlassesReader.read(posting.written())).thing();
  }

  /**
   * Writes a pair anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Glasses revise(Actor actor, UUID id, int version, WrittenGlasses written) {
    return revised(actor, id, version, () -> GlassesReader.read(written));
  }

  /** The actor's pairs that still stand, in the order they were written down; one statement. */
  @Transactional
  public List<Glasses> of(Actor actor) {
    return actor.signedIn()
        ? pairs.standing(actor.memberId()).stream()
            .map(pair -> pair.detached(actor.handle()))
            .toList()
        : List.of();
  }

  @Override
  public EntryKind returning() {
    return EntryKind.EYEWEAR;
  }

  @Override
  protected OwnRows<GlassesEntity> rows() {
    return pairs;
  }

  @Override
  protected WrittenGlasses read(String stored, NumberStyle style) {
    return GlassesReader.read(StoredJson.brought(stored, SHAPE));
  }

  @Override
  protected GlassesEntity row(EntryEntity entry, WrittenGlasses read) {
    return new GlassesEntity(entry, read);
  }

  @Override
  protected Most most() {
    return MOST;
  }
}
