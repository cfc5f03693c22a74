package club.emberwell.access.traffic;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/**
 * How much one address may have open, and how slowly it may send. Requests are answered by 200
 * threads (quarkus.thread-pool.max-threads), so what one address may have stays well below.
 */
@ConfigMapping(prefix = "emberwell.limits.traffic")
public interface TrafficLimits {
  /** Open connections; proxies that are trusted may have as many as they like. */
  @WithDefault("128")
  int connectionsOfOne();

  /**
   * Requests that wait for their answer; a workshop of thirty people behind one address has few.
   */
  @WithDefault("100")
  int requestsOfOne();

  /** Requests of which the body is still coming. */
  @WithDefault("32")
  int halfSentOfOne();

  /** The same of all addresses together: with {@link #bodyInMemory()} at most 50 MiB. */
  @WithDefault("400")
  int halfSentOfAll();

  /** From the first byte of a request to the end of its head. */
  @WithDefault("15S")
  Duration headTime();

  /** For a whole body; longer ones get a second more for each {@link #bodyRate()}. */
  @WithDefault("20S")
  Duration bodyTime();

  /** Bytes in a second that even a bad connection brings; three photos (30 MB) get half an hour. */
  @WithDefault("16384")
  int bodyRate();

  /** Longer bodies, and those that do not say their length, wait in a file. */
  @WithDefault("131072")
  int bodyInMemory();
}
