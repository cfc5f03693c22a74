package club.emberwell.keep;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.LocalTime;

/** What an operator can set of backups. */
@ConfigMapping(prefix = "emberwell.backup")
public interface BackupSettings {
  /** Where they are written. */
  Path dir();

  /** Whether a start that changes the tables makes one first; asked by the launch. */
  @WithDefault("true")
  boolean beforeUpgrade();

  /** Whether the running server makes them. */
  @WithDefault("true")
  boolean scheduled();

  /** When, in UTC: after the clubs of Europe and before the data to take along are made. */
  @WithDefault("02:10")
  LocalTime at();

  /** How many of those stay: a week in which somebody notices. */
  @WithDefault("7")
  int keep();
}
