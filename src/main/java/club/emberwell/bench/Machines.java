package club.emberwell.bench;

import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** A member's machines. Nobody but the owner sees or changes them here. */
@ApplicationScoped
public class Machines {
  private final MachineRepository machines;

  Machines(MachineRepository machines) {
    this.machines = machines;
  }

  /**
   * A machine with what was noticed about it.
   *
   * @param remarks warnings and notes
   */
  public record Kept(Machine machine, List<Remark> remarks) {}

  /**
   * Adds a machine.
   *
   * @param id made by the client, or null; the same id with the same words twice is one machine
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Kept add(Actor actor, UUID id, WrittenMachine written, NumberStyle style) {
    UUID owner = signedIn(actor);
    MachineReader.Result read = readable(written, style);
    if (id != null) {
      Optional<Machine> same = machines.findByIdOptional(id).map(MachineEntity::toMachine);
      if (same.isPresent()) {
        return new Kept(sameWords(same.get(), owner, written), read.remarks());
      }
    }
    requireRoom(owner);
    Instant now = Instant.now();
    MachineEntity machine = new MachineEntity(id == null ? UUID.randomUUID() : id, owner, now);
    machine.take(written, style, read.values(), now);
    machines.persistAndFlush(machine);
    return new Kept(machine.toMachine(), read.remarks());
  }

  private static Machine sameWords(Machine there, UUID owner, WrittenMachine written) {
    if (there.standing().memberId().equals(owner)
        && there.standing().deletedAt() == null
        && StoredJson.write(there.written()).equals(StoredJson.write(written))) {
      return there;
    }
    throw new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id belongs to another entry.");
  }

  /** The actor's machines in the order they were added, without deleted ones. */
  @Transactional
  public List<Machine> of(Actor actor) {
    return actor.signedIn()
        ? machines.keptBy(actor.memberId()).stream().map(MachineEntity::toMachine).toList()
        : List.of();
  }

  /**
   * One of the actor's machines.
   *
   * @throws EntryUnknown where it does not exist, is deleted or is somebody else's
   */
  @Transactional
  public Machine get(Actor actor, UUID id) {
    return find(actor.memberId(), id).orElseThrow(() -> new EntryUnknown("machine"));
  }

  /** The machine a member may post with; empty where there is none such. */
  @Transactional
  public Optional<Machine> find(UUID owner, UUID id) {
    return machines
        .findByIdOptional(id)
        .filter(machine -> !machine.deleted() && machine.memberId().equals(owner))
        .map(MachineEntity::toMachine);
  }

  /** The same also where its owner removed it, for what was made for it. */
  @Transactional
  public Optional<Machine> even(UUID owner, UUID id) {
    return machines
        .findByIdOptional(id)
        .filter(machine -> machine.memberId().equals(owner))
        .map(MachineEntity::toMachine);
  }

  /**
   * Describes a machine anew. Reports made with it keep the laser as it was.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Kept revise(Actor actor, UUID id, int version, WrittenMachine written, NumberStyle style) {
    MachineEntity machine = owned(actor, id);
    if (machine.version() != version) {
      throw new EntryChanged(machine.version());
    }
    MachineReader.Result read = readable(written, style);
    machine.take(written, style, read.values(), Instant.now());
    return new Kept(machine.toMachine(), read.remarks());
  }

  /** Takes a machine off the bench; its row stays for the reports made with it. */
  @Transactional
  public void delete(Actor actor, UUID id) {
    owned(actor, id).delete(Instant.now());
  }

  private MachineEntity owned(Actor actor, UUID id) {
    signedIn(actor);
    return machines
        .findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
        .filter(machine -> !machine.deleted() && actor.is(machine.memberId()))
        .orElseThrow(() -> new EntryUnknown("machine"));
  }

  /**
   * A machine of a file of its owner's.
   *
   * @param standing as it stood there; its number is a new one
   * @throws EntryRefused with the pointers of the fields at fault; nothing was stored then
   */
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(
      Actor actor, Machine.Standing standing, WrittenMachine written, NumberStyle style) {
    MachineReader.Result read = readable(written, style);
    if (standing.deletedAt() == null) {
      requireRoom(actor.memberId());
    }
    MachineEntity machine =
        new MachineEntity(standing.id(), actor.memberId(), standing.createdAt());
    machine.take(written, style, read.values(), standing.updatedAt());
    machine.stood(standing);
    machines.persistAndFlush(machine);
  }

  private void requireRoom(UUID owner) {
    if (machines.countKeptBy(owner) >= MachineLimits.PER_MEMBER) {
      throw new EntryRefused(
          RemarkId.TOO_MANY_MACHINES,
          "",
          "You can have at most " + MachineLimits.PER_MEMBER + " machines.");
    }
  }

  private static MachineReader.Result readable(WrittenMachine written, NumberStyle style) {
    MachineReader.Result read = MachineReader.read(written, style);
    Remarks.refuse(read.remarks());
    return read;
  }

  private static UUID signedIn(Actor actor) {
    if (!actor.signedIn()) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Sign in first.");
    }
    return actor.memberId();
  }
}
