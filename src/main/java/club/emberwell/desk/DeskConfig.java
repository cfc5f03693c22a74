package club.emberwell.desk;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.time.ZoneId;

/** What an operator can set of the desk; moderators change rules on the desk itself. */
@ConfigMapping(prefix = "emberwell.desk")
public interface DeskConfig {
  /** So many accepted entries make a member's next ones appear at once; 0: all do. */
  @WithDefault("3")
  int firstLook();

  /** What waits longer is reminded of. */
  @WithDefault("48H")
  Duration remindAfter();

  @WithDefault("24H")
  Duration remindEvery();

  /** Where no browser says another one, days of the desk begin in this zone. */
  @WithDefault("UTC")
  ZoneId timeZone();

  /** How often new entries are held against the rules. */
  @WithDefault("2S")
  String rulesEvery();
}
