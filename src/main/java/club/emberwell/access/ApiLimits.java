package club.emberwell.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** What the API takes at most. */
@ConfigMapping(prefix = "emberwell.limits.api")
public interface ApiLimits {
  /** Bytes of one JSON body. */
  @WithDefault("262144")
  long jsonBody();
}
