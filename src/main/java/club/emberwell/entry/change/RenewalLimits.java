package club.emberwell.entry.change;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/**
 * How often what is made from the database may be made anew because the database is not the one it
 * was: two servers that answer in turn under one address must not keep the club busy without end.
 */
@ConfigMapping(prefix = "emberwell.limits.renewal")
public interface RenewalLimits {
  /** Histories that begin one after the other before pauses grow. */
  @WithDefault("10")
  int historiesAtOnce();

  /** The shortest pause before another history. */
  @WithDefault("5S")
  Duration historyPause();

  /** Search indexes that are built one after the other before pauses grow. */
  @WithDefault("3")
  int indexesAtOnce();

  /** The shortest pause before another index; also after one that could not be built. */
  @WithDefault("2S")
  Duration indexPause();

  /** The longest pause of either; a club that finds nothing is looked at by then. */
  @WithDefault("5M")
  Duration longestPause();
}
