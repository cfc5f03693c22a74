package club.emberwell.member;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/**
 * How much can be sent before each further write waits: far above what people do by hand and above
 * bringing along some years of one's own results, far below a flood.
 */
@ConfigMapping(prefix = "emberwell.limits.write")
public interface WriteLimits {
  Account account();

  /** A whole club may share an address. */
  Address address();

  /** Defaults for a member. */
  interface Account extends MemberLimits.Rule {
    @Override
    @WithDefault("1000")
    int free();

    @Override
    @WithDefault("1S")
    Duration first();

    @Override
    @WithDefault("1M")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }

  /** Defaults for an address (IPv4 /24, IPv6 /64). */
  interface Address extends MemberLimits.Rule {
    @Override
    @WithDefault("5000")
    int free();

    @Override
    @WithDefault("1S")
    Duration first();

    @Override
    @WithDefault("1M")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }
}
