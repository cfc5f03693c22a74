package club.emberwell.member.door;

import club.emberwell.member.pace.Pace;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Every limit of the ways into the club that an operator may set. */
@ConfigMapping(prefix = "emberwell.limits.door")
public interface DoorLimits {
  /** How long an invitation works unless said otherwise, in days. */
  @WithDefault("14")
  int invitationDays();

  @WithDefault("90")
  int invitationDaysMax();

  /** How many people one invitation lets in at most. */
  @WithDefault("200")
  int invitationUsesMax();

  /** Invitations one moderator can have open at a time. */
  @WithDefault("50")
  int invitationsOpenMax();

  /** How long the code of the first owner works. */
  @WithDefault("24H")
  Duration ownerCodeLife();

  /** New accounts from one address. */
  @WithDefault("60 in 1H, then 10S to 30M")
  Pace signUpAddress();

  /** Codes tried from one address. */
  @WithDefault("20 in 1H, then 2S to 15M")
  Pace codeAddress();

  /** Invitations made by one member. */
  @WithDefault("30 in 1H, then 30S to 1H")
  Pace invite();
}
