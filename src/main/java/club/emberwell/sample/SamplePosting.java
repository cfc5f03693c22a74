package club.emberwell.sample;

import java.time.Instant;
import java.util.UUID;

/**
 * A sample on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one sample
 * @param at when it was put away, null = now
 */
public record SamplePosting(UUID id, WrittenSample written, Instant at) {
  /** Put away now. */
  public static SamplePosting of(UUID id, WrittenSample written) {
    return new SamplePosting(id, written, null);
  }
}
