package club.emberwell.lot;

import java.time.Instant;
import java.util.UUID;

/**
 * A lot on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one lot
 * @param at when it was written down, null = now
 */
public record LotPosting(UUID id, WrittenLot written, Instant at) {
  /** Written down now. */
  public static LotPosting of(UUID id, WrittenLot written) {
    return new LotPosting(id, written, null);
  }
}
