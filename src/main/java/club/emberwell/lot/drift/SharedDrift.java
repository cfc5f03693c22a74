package club.emberwell.lot.drift;

import club.emberwell.lot.drift.Drift.Noticed;
import java.util.List;

/**
 * What the check over the shared lots of one supplier found.
 *
 * @param blanks material, coating and colour
 * @param members whose lots were looked at
 * @param lots that were burned
 * @param noticed changes, by month
 */
public record SharedDrift(String blanks, int members, int lots, List<Noticed> noticed) {
  public SharedDrift {
    noticed = List.copyOf(noticed);
  }
}
