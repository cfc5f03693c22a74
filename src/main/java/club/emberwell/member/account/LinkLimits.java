package club.emberwell.member.account;

import club.emberwell.member.pace.Pace;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Limits of the links that letters carry. */
@ConfigMapping(prefix = "emberwell.limits.link")
public interface LinkLimits {
  @WithDefault("1H")
  Duration resetLife();

  @WithDefault("48H")
  Duration confirmLife();

  /** Links asked for from one address. */
  @WithDefault("10 in 1H, then 30S to 1H")
  Pace address();

  /** Links asked for one mail address: nobody's inbox is filled by a stranger. */
  @WithDefault("3 in 24H, then 10M to 6H")
  Pace account();

  /** Links tried from one address. */
  @WithDefault("20 in 1H, then 2S to 15M")
  Pace tried();
}
