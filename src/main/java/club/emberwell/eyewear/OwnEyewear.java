package club.emberwell.eyewear;

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
 * Keeps a member's glasses, which nobody else sees. Every write is one transaction with its
 * revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class OwnEyewear implements Kind, ComesBack {
  private static final Set<EntryKind> EYEWEAR = Set.of(EntryKind.EYEWEAR);
  private static final TypeReference<WrittenGlasses> SHAPE = new TypeReference<>() {};

  private final GlassesRepository pairs;
  private final EntryLife life;

  OwnEyewear(GlassesRepository pairs, EntryLife life) {
    this.pairs = pairs;
    this.life = life;
  }

  /**
   * Writes a pair down.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Glasses add(Actor actor, GlassesPosting posting) {
    UUID owner = EntryAccess.signedIn(actor);
    WrittenGlasses written = GlassesReader.read(posting.written());
    if (life.isThere(posting.id(), EntryKind.EYEWEAR, owner)) {
      GlassesEntity there = pairs.whole(posting.id()).orElseThrow();
      if (!there.written().equals(written)) {
        throw EntryLife.taken(EntryKind.EYEWEAR);
      }
      return there.toGlasses(actor.handle());
    }
    requireRoom(owner);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    NewEntry made = new NewEntry(id, EntryKind.EYEWEAR, null, Origin.HERE, Instant.now());
    GlassesEntity pair =
        new GlassesEntity(life.begin(actor, made, GlassesEntity.words(written)), written);
    pairs.persistAndFlush(pair);
    return pair.toGlasses(actor.handle());
  }

  /**
   * Writes a pair anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Glasses revise(Actor actor, UUID id, int version, WrittenGlasses written) {
    EntryEntity entry = life.editable(actor, EYEWEAR, id, version);
    WrittenGlasses read = GlassesReader.read(written);
    GlassesEntity pair = pairs.whole(id).orElseThrow();
    pair.take(read);
    life.rewritten(entry, GlassesEntity.words(read), EntryAction.EDITED, Cause.now(actor, null));
    return pair.toGlasses(actor.handle());
  }

  /** Takes a pair off the list; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, EYEWEAR, id, version);
  }

  /**
   * One of the actor's pairs.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Glasses get(Actor actor, UUID id) {
    GlassesEntity pair = pairs.whole(id).orElseThrow(() -> new EntryUnknown("eyewear"));
    EntryAccess.standing(actor, pair.entry());
    return pair.toGlasses(actor.handle());
  }

  /** The actor's pairs that still stand, in the order they were written down; one statement. */
  @Transactional
  public List<Glasses> of(Actor actor) {
    return actor.signedIn()
        ? pairs.standing(actor.memberId()).stream()
            .map(pair -> pair.toGlasses(actor.handle()))
            .toList()
        : List.of();
  }

  @Override
  public EntryKind returning() {
    return EntryKind.EYEWEAR;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    EntryEntity entry =
        life.comeBack(actor, EntryKind.EYEWEAR, from, words -> GlassesEntity.words(brought(words)));
    pairs.persistAndFlush(new GlassesEntity(entry, brought(from.written())));
  }

  private static WrittenGlasses brought(String words) {
    return GlassesReader.read(StoredJson.brought(words, SHAPE));
  }

  private void requireRoom(UUID owner) {
    if (pairs.countOf(owner) >= EyewearLimits.PER_MEMBER) {
      String detail = "You have as many glasses as fit: %d.".formatted(EyewearLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.EYEWEAR_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return EYEWEAR;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    revise(actor, id, version, StoredJson.read(written, SHAPE));
  }
}
