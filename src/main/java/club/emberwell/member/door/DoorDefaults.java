package club.emberwell.member.door;

import club.emberwell.member.club.ClubOptions;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** How the doors of a club stand at its very first start; owners change them later on a page. */
@ConfigMapping(prefix = "emberwell.first")
public interface DoorDefaults {
  @WithDefault("invitation")
  ClubOptions.Door door();

  @WithDefault("false")
  boolean readingPublic();
}
