package club.emberwell.launch;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/**
 * How long the database may say nothing before it counts as away. What waits on a connection longer
 * gets an error; the server behind it ends the statement within {@link #abandoned()}.
 */
@ConfigMapping(prefix = "emberwell.limits.database")
interface DatabaseTimes {
  /** While a person or a program waits for an answer. */
  @WithDefault("5S")
  Duration request();

  /** In the background: reading all reports into an index, packing data to take along. */
  @WithDefault("2M")
  Duration background();

  /** Until the start is over: a migration may rewrite a large table. */
  @WithDefault("30M")
  Duration start();

  /** For the check of readiness, of which others wait for the answer. */
  @WithDefault("2S")
  Duration readiness();

  /** For a connection that lay idle to say that it is alive; else a new one is made. */
  @WithDefault("300MS")
  Duration idle();

  /** After so long a server notices that nobody waits for its statement any more. */
  @WithDefault("5S")
  Duration abandoned();
}
