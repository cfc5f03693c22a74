package club.emberwell.entry.own;

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
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Entries of one kind that nobody but their owner sees: written down, written anew, taken off the
 * list, brought back out of a copy. Every write is one transaction with its revision; whatever is
 * thrown, nothing was stored.
 *
 * @param <R> what was read of one
 * @param <E> the row of one
 * @param <T> one as it stands, detached
 */
public abstract class OwnEntries<R extends OwnWords, E extends OwnRow<R, T>, T>
    implements Kind, ComesBack {
  @Inject EntryLife life;

  /**
   * One that was just stored.
   *
   * @param created false where the same one was there already
   */
  public record Stored<T>(T thing, boolean created) {}

  /**
   * How many a member may have.
   *
   * @param said what they are called, many of them
   */
  public record Most(int number, String said, RemarkId id) {}

  protected abstract OwnRows<E> rows();

  /**
   * Reads one in the form in which it is kept.
   *
   * @throws EntryRefused where it is none
   */
  protected abstract R read(String stored, NumberStyle style);

  protected abstract E row(EntryEntity entry, R read);

  protected abstract Most most();

  /**
   * Looks at what is known only with its owner.
   *
   * @throws EntryRefused where it names what is not the owner's
   */
  protected void check(Actor owner, R read) {}

  /**
   * Writes one down in the caller's transaction.
   *
   * @param id made by the client, or null; the same id with the same words twice is one
   * @param at when it was written down, null = now
   */
  protected Stored<T> added(Actor actor, UUID id, Instant at, R read) {
    UUID owner = EntryAccess.signedIn(actor);
    check(actor, read);
    if (life.isThere(id, returning(), owner)) {
      E there = rows().whole(id).orElseThrow();
      if (!there.says(read)) {
        throw EntryLife.taken(returning());
      }
      return new Stored<>(there.detached(actor.handle()), false);
    }
    requireRoom(owner);
    NewEntry made =
        new NewEntry(
            id == null ? UUID.randomUUID() : id,
            returning(),
            null,
            Origin.HERE,
            at == null ? Instant.now() : at);
    E row = row(life.begin(actor, made, read.words()), read);
    rows().persistAndFlush(row);
    return new Stored<>(row.detached(actor.handle()), true);
  }

  private void requireRoom(UUID owner) {
    if (rows().countOf(owner) >= most().number()) {
      throw new EntryRefused(
          most().id(),
          "",
          "You have as many %s as fit: %d.".formatted(most().said(), most().number()));
    }
  }

  /**
   * Writes one anew in the caller's transaction.
   *
   * @param version the version the change is based on
   * @param words read once it is known that the actor may
   * @throws EntryChanged where it was changed meanwhile
   */
  protected T revised(Actor actor, UUID id, int version, Supplier<R> words) {
    return rewritten(actor, life.editable(actor, kinds(), id, version), words.get());
  }

  /** The same of an entry that is held already. */
  protected T rewritten(Actor actor, EntryEntity entry, R read) {
    check(actor, read);
    E row = rows().whole(entry.id()).orElseThrow();
    row.take(read);
    life.rewritten(entry, read.words(), EntryAction.EDITED, Cause.now(actor, null));
    return row.detached(actor.handle());
  }

  /** Takes one off the list; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, kinds(), id, version);
  }

  /**
   * One of the actor's.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public T get(Actor actor, UUID id) {
    E row = rows().whole(id).orElseThrow(() -> new EntryUnknown(returning().code()));
    EntryAccess.standing(actor, row.entry());
    return row.detached(actor.handle());
  }

  /** The same, empty where there is none. */
  @Transactional
  public Optional<T> find(Actor actor, UUID id) {
    return rows()
        .whole(id)
        .filter(row -> actor.is(row.entry().memberId()) && row.entry().live())
        .map(row -> row.detached(actor.handle()));
  }

  @Override
  public Set<EntryKind> kinds() {
    return Set.of(returning());
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    R newest = read(from.written(), from.style());
    check(actor, newest);
    EntryEntity entry =
        life.comeBack(actor, returning(), from, words -> read(words, from.style()).words());
    rows().persistAndFlush(row(entry, newest));
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    NumberStyle style = rows().whole(id).orElseThrow().numberStyle();
    revised(actor, id, version, () -> read(written, style));
  }
}
