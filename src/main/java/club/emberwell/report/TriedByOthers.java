package club.emberwell.report;

import club.emberwell.laser.Effect;
import java.util.Map;

/**
 * How a report came out for others who tried it, each member by their latest live repeat; of a grid
 * they posted, right where any of its trials was.
 *
 * @param members how many tried
 */
public record TriedByOthers(int members, int right, int tooLittle, int tooMuch) {
  static TriedByOthers of(Map<Effect, Integer> members) {
    int right = members.getOrDefault(Effect.RIGHT, 0);
    int little = members.getOrDefault(Effect.TOO_LITTLE, 0);
    int much = members.getOrDefault(Effect.TOO_MUCH, 0);
    return new TriedByOthers(right + little + much, right, little, much);
  }
}
