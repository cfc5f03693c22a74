package club.emberwell.hook;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** What an operator can set of webhooks; owners add them on a page. */
@ConfigMapping(prefix = "emberwell.webhooks")
public interface HookConfig {
  /**
   * Networks ({@code 10.0.0.0/8}), addresses and names of hosts that may be called though they are
   * private, and without TLS.
   */
  Optional<List<String>> allow();

  /** How often a node looks whether something is to be sent. */
  @WithDefault("2s")
  String every();

  /** Calls of a node under way at the same time. */
  @WithDefault("4")
  int atOnce();

  @WithDefault("5S")
  Duration connectTimeout();

  /** From connecting to the head of the answer. */
  @WithDefault("10S")
  Duration timeout();

  /** How long one try may take before another node may try. */
  @WithDefault("2M")
  Duration lease();

  /** The pause before the second try; each next one is twice as long. */
  @WithDefault("30S")
  Duration firstPause();

  @WithDefault("4H")
  Duration longestPause();

  /** What could not be delivered for so long is given up. */
  @WithDefault("24H")
  Duration giveUpAfter();

  /** A webhook at which nothing arrives for so long is switched off. */
  @WithDefault("5D")
  Duration offAfter();

  /** How long a replaced secret signs beside the new one. */
  @WithDefault("24H")
  Duration oldSecret();

  /** How long deliveries that are over are kept for owners to see. */
  @WithDefault("14D")
  Duration keep();

  /** Deliveries of one webhook that may wait; what comes beyond is left out and counted. */
  @WithDefault("1000")
  int queue();
}
