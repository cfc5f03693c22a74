package club.emberwell.card;

import club.emberwell.member.pace.Pace;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** Limits of the links to job cards. */
@ConfigMapping(prefix = "emberwell.limits.card")
public interface CardLimits {
  /** Links of one recipe that work: a shop has fewer helpers. */
  int OPEN = 20;

  /** Links of one recipe that are listed, those that were ended too. */
  int LISTED = 100;

  /** Links that open nothing, tried from one address; one that opens does not count. */
  @WithDefault("20 in 1H, then 2S to 15M")
  Pace tried();
}
