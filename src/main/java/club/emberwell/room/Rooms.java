package club.emberwell.room;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
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
import club.emberwell.entry.Words;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Keeps a member's rooms and what is checked there, which nobody else sees. Every write is one
 * transaction with its revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class Rooms implements Kind, ComesBack {
  private static final Set<EntryKind> ROOMS = Set.of(EntryKind.ROOM);
  private static final TypeReference<WrittenRoom> SHAPE = new TypeReference<>() {};

  private final RoomRepository rooms;
  private final EntryLife life;
  private final Machines machines;

  Rooms(RoomRepository rooms, EntryLife life, Machines machines) {
    this.rooms = rooms;
    this.life = life;
    this.machines = machines;
  }

  /** A check that is due. */
  public record Due(UUID room, String name, CheckState state) {}

  /**
   * Writes a room down.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Room add(Actor actor, RoomPosting posting) {
    UUID owner = EntryAccess.signedIn(actor);
    RoomValues values = readable(actor, posting.written(), posting.style());
    if (life.isThere(posting.id(), EntryKind.ROOM, owner)) {
      RoomEntity there = rooms.whole(posting.id()).orElseThrow();
      if (!StoredJson.write(there.written()).equals(StoredJson.write(posting.written()))) {
        throw EntryLife.taken(EntryKind.ROOM);
      }
      return there.toRoom(actor.handle());
    }
    requireRoom(owner);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    NewEntry made = new NewEntry(id, EntryKind.ROOM, null, Origin.HERE, Instant.now());
    EntryEntity entry = life.begin(actor, made, RoomEntity.words(posting.written(), values));
    RoomEntity room = new RoomEntity(entry, posting.written(), posting.style(), values);
    rooms.persistAndFlush(room);
    return room.toRoom(actor.handle());
  }

  private RoomValues readable(Actor actor, WrittenRoom written, NumberStyle style) {
    RoomValues values = RoomReader.read(written, style);
    if (!values.machines().isEmpty()) {
      Set<UUID> own = machines.of(actor).stream().map(Machine::id).collect(Collectors.toSet());
      if (!own.containsAll(values.machines())) {
        throw new EntryRefused(
            RemarkId.MACHINE_UNKNOWN, "/machines", "One of these is not on your bench.");
      }
    }
    return values;
  }

  /**
   * Writes a room anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Room revise(Actor actor, UUID id, int version, WrittenRoom written, NumberStyle style) {
    EntryEntity entry = life.editable(actor, ROOMS, id, version);
    return rewritten(actor, entry, written, style);
  }

  private Room rewritten(Actor actor, EntryEntity entry, WrittenRoom written, NumberStyle style) {
    RoomValues values = readable(actor, written, style);
    RoomEntity room = rooms.whole(entry.id()).orElseThrow();
    room.take(written, style, values);
    life.rewritten(
        entry, RoomEntity.words(written, values), EntryAction.EDITED, Cause.now(actor, null));
    return room.toRoom(actor.handle());
  }

  /**
   * Something was checked: a new version of the room says so. Said again of the same day it does
   * nothing.
   *
   * @param check its code
   * @param on ISO 8601; null = today
   * @throws EntryRefused for a check that is not here or a day to come
   */
  @Transactional
  public Room checked(Actor actor, UUID id, String check, String on) {
    EntryEntity entry = life.own(actor, ROOMS, id, null);
    EntryAccess.standing(actor, entry);
    RoomEntity room = rooms.whole(id).orElseThrow();
    FieldReader in = new FieldReader(NumberStyle.ANY);
    LocalDate day = RoomReader.day(in, "/on", on);
    Remarks.refuse(in.remarks());
    LocalDate done = day == null ? LocalDate.now(ZoneOffset.UTC) : day;
    CheckState state =
        room.toRoom(actor.handle()).values().checks().stream()
            .filter(one -> one.check().code().equals(check))
            .findFirst()
            .orElseThrow(
                () ->
                    new EntryRefused(
                        RemarkId.CHOICE_UNKNOWN, "/check", "There is no such check in this room."));
    if (done.equals(state.lastOn())) {
      return room.toRoom(actor.handle());
    }
    return rewritten(actor, entry, marked(room.written(), state, done), room.numberStyle());
  }

  private static WrittenRoom marked(WrittenRoom written, CheckState state, LocalDate done) {
    String code = state.check().code();
    List<WrittenRoom.Check> checks =
        written.checks().stream()
            .filter(one -> !code.equals(one.check()))
            .collect(Collectors.toCollection(ArrayList::new));
    Integer days =
        written.checks().stream()
            .filter(one -> code.equals(one.check()))
            .map(WrittenRoom.Check::everyDays)
            .filter(Objects::nonNull)
            .findFirst()
            .orElse(null);
    checks.add(new WrittenRoom.Check(code, null, days, done.toString()));
    return written.with(checks);
  }

  /** Takes a room off the list; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, ROOMS, id, version);
  }

  /**
   * One of the actor's rooms.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Room get(Actor actor, UUID id) {
    RoomEntity room = rooms.whole(id).orElseThrow(() -> new EntryUnknown("room"));
    EntryAccess.standing(actor, room.entry());
    return room.toRoom(actor.handle());
  }

  /** The same, empty where there is none. */
  @Transactional
  public Optional<Room> find(Actor actor, UUID id) {
    return rooms
        .whole(id)
        .filter(room -> actor.is(room.entry().memberId()) && room.entry().live())
        .map(room -> room.toRoom(actor.handle()));
  }

  /** The actor's rooms that still stand, in the order they were written down; one statement. */
  @Transactional
  public List<Room> of(Actor actor) {
    return actor.signedIn()
        ? rooms.standing(actor.memberId()).stream()
            .map(room -> room.toRoom(actor.handle()))
            .toList()
        : List.of();
  }

  /** What is due today in the actor's rooms, the longest due first. */
  public List<Due> due(Actor actor) {
    return due(of(actor), LocalDate.now(ZoneOffset.UTC));
  }

  static List<Due> due(List<Room> rooms, LocalDate today) {
    return rooms.stream()
        .flatMap(
            room ->
                room.values().checks().stream()
                    .filter(state -> state.isDue(today))
                    .map(state -> new Due(room.id(), room.name(), state)))
        .sorted(
            Comparator.comparing(
                due -> due.state().dueOn(), Comparator.nullsLast(Comparator.naturalOrder())))
        .toList();
  }

  @Override
  public EntryKind returning() {
    return EntryKind.ROOM;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    EntryEntity entry =
        life.comeBack(actor, EntryKind.ROOM, from, words -> words(brought(words), from.style()));
    WrittenRoom written = brought(from.written());
    RoomValues values = readable(actor, written, from.style());
    rooms.persistAndFlush(new RoomEntity(entry, written, from.style(), values));
  }

  private static WrittenRoom brought(String words) {
    return StoredJson.brought(words, SHAPE);
  }

  private static Words words(WrittenRoom written, NumberStyle style) {
    return RoomEntity.words(written, RoomReader.read(written, style));
  }

  private void requireRoom(UUID owner) {
    if (rooms.countOf(owner) >= RoomLimits.PER_MEMBER) {
      String detail = "You have as many rooms as fit: %d.".formatted(RoomLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.ROOMS_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return ROOMS;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    NumberStyle style = rooms.whole(id).orElseThrow().numberStyle();
    revise(actor, id, version, StoredJson.read(written, SHAPE), style);
  }
}
