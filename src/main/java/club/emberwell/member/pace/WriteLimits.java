package club.emberwell.member.pace;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/**
 * How much can be sent before each further write waits: far above what people do by hand and above
 * bringing along some years of one's own results, far below a flood.
 */
@ConfigMapping(prefix = "emberwell.limits.write")
public interface WriteLimits {
  /** Of one member. */
  @WithDefault("1000 in 1H, then 1S to 1M")
  Pace account();

  /** From one address (IPv4 /24, IPv6 /64), which a whole club may share. */
  @WithDefault("5000 in 1H, then 1S to 1M")
  Pace address();
}
