package club.emberwell.consensus;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportBriefs;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A member's machines, those used last first.
 *
 * @param member number, 0 = a stranger
 */
public record OwnMachines(long member, List<Machine> lastUsedFirst) {
  private static final OwnMachines NONE = new OwnMachines(0, List.of());

  static OwnMachines of(Actor actor, Machines machines, ReportBriefs reports) {
    if (!actor.signedIn()) {
      return NONE;
    }
    ReportBriefs.Used used = reports.used(actor.memberId());
    List<UUID> order = List.copyOf(used.machines());
    List<Machine> own = new ArrayList<>(machines.of(actor));
    own.sort(
        Comparator.comparingInt(
            machine -> {
              int place = order.indexOf(machine.id());
              return place < 0 ? order.size() : place;
            }));
    return new OwnMachines(used.member(), List.copyOf(own));
  }

  /**
   * The machine that is answered for: the one asked for, else the last used whose light did what
   * was found, else the last used.
   *
   * @param asked its id, or null
   * @throws EntryUnknown where it is not one of these
   */
  Optional<Machine> chosen(UUID asked, List<RangeKey> found) {
    if (asked != null) {
      return Optional.of(
          lastUsedFirst.stream()
              .filter(machine -> machine.id().equals(asked))
              .findFirst()
              .orElseThrow(() -> new EntryUnknown("machine")));
    }
    return lastUsedFirst.stream()
        .filter(machine -> found.stream().anyMatch(key -> key.litBy(machine.laser())))
        .findFirst()
        .or(() -> lastUsedFirst.stream().findFirst());
  }

  Reader reader(Optional<Machine> chosen) {
    return chosen
        .map(machine -> new Reader(member, machine.standing().number(), machine.laser()))
        .orElse(new Reader(member, 0, null));
  }
}
