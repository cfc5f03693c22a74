package club.emberwell.room;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.own.OwnEntries;
import club.emberwell.entry.own.OwnRows;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** Keeps a member's rooms and what is checked there, which nobody else sees. */
@ApplicationScoped
public class Rooms extends OwnEntries<ReadRoom, RoomEntity, Room> {
  private static final Most MOST = new Most(RoomLimits.PER_MEMBER, "rooms", RemarkId.ROOMS_MANY);
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
    ReadRoom read = ReadRoom.of(posting.written(), posting.style());
    return added(actor, posting.id(), null, read).thing();
  }

  /**
   * Writes a room anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Room revise(Actor actor, UUID id, int version, WrittenRoom written, NumberStyle style) {
    return revised(actor, id, version, () -> ReadRoom.of(written, style));
  }

  @Override
  protected void check(Actor owner, ReadRoom read) {
    List<UUID> named = read.values().machines();
    if (!named.isEmpty()) {
      Set<UUID> own = machines.of(owner).stream().map(Machine::id).collect(Collectors.toSet());
      if (!own.containsAll(named)) {
        throw new EntryRefused(
            RemarkId.MACHINE_UNKNOWN, "/machines", "One of these is not on your bench.");
      }
    }
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
    EntryEntity entry = life.own(actor, kinds(), id, null);
    EntryAccess.standing(actor, entry);
    RoomEntity room = rooms.whole(id).orElseThrow();
    FieldReader in = new FieldReader(NumberStyle.ANY);
    LocalDate day = RoomReader.day(in, "/on", on);
    Remarks.refuse(in.remarks());
    LocalDate done = day == null ? LocalDate.now(ZoneOffset.UTC) : day;
    CheckState state =
        room.detached(actor.handle()).values().checks().stream()
            .filter(one -> one.check().code().equals(check))
            .findFirst()
            .orElseThrow(
                () ->
                    new EntryRefused(
                        RemarkId.CHOICE_UNKNOWN, "/check", "There is no such check in this room."));
    if (done.equals(state.lastOn())) {
      return room.detached(actor.handle());
    }
    WrittenRoom written = marked(room.written(), state, done);
    return rewritten(actor, entry, ReadRoom.of(written, room.numberStyle()));
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

  /** The actor's rooms that still stand, in the order they were written down; one statement. */
  @Transactional
  public List<Room> of(Actor actor) {
    return actor.signedIn()
        ? rooms.standing(actor.memberId()).stream()
            .map(room -> room.detached(actor.handle()))
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
  protected OwnRows<RoomEntity> rows() {
    return rooms;
  }

  @Override
  protected ReadRoom read(String stored, NumberStyle style) {
    return ReadRoom.of(StoredJson.brought(stored, SHAPE), style);
  }

  @Override
  protected RoomEntity row(EntryEntity entry, ReadRoom read) {
    return new RoomEntity(entry, read);
  }

  @Override
  protected Most most() {
    return MOST;
  }
}
