package club.emberwell.exchange.open;

import java.util.HashMap;
import java.util.Map;

/**
 * Counts members and machines from 1 as they come by, so that one can tell them apart within one
 * file, and nowhere else.
 */
final class Ordinals {
  private final Map<Long, Integer> members = new HashMap<>();
  private final Map<Long, Integer> machines = new HashMap<>();

  int member(long number) {
    return members.computeIfAbsent(number, n -> members.size() + 1);
  }

  /** Null where the laser is described in the report only. */
  Integer machine(long number) {
    return number == 0
        ? null
        : Integer.valueOf(machines.computeIfAbsent(number, n -> machines.size() + 1));
  }

  int members() {
    return members.size();
  }
}
