package club.emberwell.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/**
 * How many bytes may be sent: the one list of it. Which of them holds for an address says {@link
 * LongestBody}; what else the server takes is bounded by {@code quarkus.http.limits}.
 */
@ConfigMapping(prefix = "emberwell.limits.body")
public interface BodyLimits {
  /** A form that takes photos: three of 10 MB and some, and what is written beside them. */
  @WithDefault("33554432")
  long photos();

  /** One picture of 10 MB, alone or as a part of a form. */
  @WithDefault("11534336")
  long picture();

  /** A copy of a bench with its photos, packed. */
  @WithDefault("262144000")
  long benchCopy();

  /** Any other form; its longest text has 64 kB. */
  @WithDefault("1048576")
  long form();

  /** Any other body for a program; a report of a large grid has 60 kB. */
  @WithDefault("262144")
  long json();
}
