package club.emberwell.exchange.bench;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** What a copy of a bench may take of the server. */
@ConfigMapping(prefix = "emberwell.limits.bench-copy")
public interface CopyLimits {
  /** Files in it: a photo of each of 1,300 lots and fixtures and of 2,000 grids, and some. */
  @WithDefault("5000")
  int files();

  /** Bytes of all files together, unpacked: 500 MB of photos, the usual space of a member. */
  @WithDefault("600000000")
  long unpacked();

  /** Bytes of the list of one kind; it is held in memory while it is read line by line. */
  @WithDefault("32000000")
  int list();

  /** Bytes of the page to read, which says all lists once more. */
  @WithDefault("200000000")
  long page();

  /** Bytes of one line: a recipe with a thousand revisions has less. */
  @WithDefault("4000000")
  int line();

  /** Lines of one list: no member may keep more of a kind. */
  @WithDefault("3000")
  int lines();

  /** Files read at once; each may take {@link #list()} and some. */
  @WithDefault("1")
  int atOnce();

  /** Files that wait for that. */
  @WithDefault("6")
  int waiting();

  /** As long as one waits for its turn; with the next two below the minute of a connection. */
  @WithDefault("12S")
  Duration queued();

  /** As long as the transaction of its things may take. */
  @WithDefault("28")
  int seconds();

  /** How long photos are brought back for one request; the rest comes when it is sent again. */
  @WithDefault("12S")
  Duration photos();

  /** The pause between two saved copies of one member. */
  @WithDefault("5S")
  Duration pause();

  /** How long a file that was sent and looked at waits to be restored. */
  @WithDefault("6H")
  Duration kept();

  /** After which whoever was sent away may come again. */
  @WithDefault("10S")
  Duration again();
}
