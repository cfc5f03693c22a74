package club.emberwell.exchange;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Limits of download and erasure. */
@ConfigMapping(prefix = "emberwell.limits.personal-data")
public interface PersonalDataLimits {
  /** How long one erasure may take; it looks through every text of the club. */
  @WithDefault("600")
  int erasureSeconds();

  @WithDefault("300")
  int downloadSeconds();

  /** The pause between two downloads of one member. */
  @WithDefault("1M")
  Duration downloadPause();

  /** How long accounts that were turned away are kept. */
  @WithDefault("30D")
  Duration turnedAwayKept();
}
