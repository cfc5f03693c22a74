package club.emberwell.report.photo;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/**
 * What making pictures ready may take of the server. Times end below the minute after which a
 * silent connection is closed: 20 s in the queue and 30 s of work are 50.
 */
@ConfigMapping(prefix = "emberwell.limits.pictures")
public interface PictureLimits {
  /** Pictures decoded at once, by threads of their own; of one member one at a time. */
  @WithDefault("2")
  int atOnce();

  /** Uploads that wait for a thread; a photo of a phone takes half a second. */
  @WithDefault("12")
  int waiting();

  /** Of these, at work or waiting, for one member: a form, and a phone that catches up. */
  @WithDefault("4")
  int ofOneMember();

  /** As long as one waits for a thread before it is told to come again. */
  @WithDefault("20S")
  Duration queued();

  /** As long as one upload may be worked at, all of its pictures together. */
  @WithDefault("30S")
  Duration work();

  /**
   * Time of the processor for one picture; the largest ordinary one takes three seconds of a fast
   * one.
   */
  @WithDefault("12S")
  Duration processor();

  /** As long as a request waits for one of our own small pictures. */
  @WithDefault("5S")
  Duration own();

  /** Pictures in progress take at most one part of so many of the heap. */
  @WithDefault("4")
  int partOfHeap();

  /** After which whoever was sent away may come again. */
  @WithDefault("5S")
  Duration again();
}
