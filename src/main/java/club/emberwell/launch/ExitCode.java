package club.emberwell.launch;

import club.emberwell.keep.KeepRefused;

/** How the process ends; scripts and service managers may rely on these numbers. */
public enum ExitCode {
  STOPPED(0, "Stopped as asked."),
  FAILED(1, "Something failed that has no code of its own."),
  WRONG_SETTING(2, "A setting or an argument is wrong."),
  NEWER_SCHEMA(3, "The database was written by a newer version of the program."),
  NO_DATABASE(4, "No database answers."),
  HOME_IN_USE(5, "Another server runs on the same home or database."),
  OTHER_CLUB(6, "The database is not the one of the club that the home belongs to."),
  DAMAGED_BACKUP(7, "A backup is damaged, or what was restored is not what was kept."),
  CLUB_IS_THERE(8, "A club is there that would be lost; nothing was changed.");

  private final int number;
  private final String meaning;

  ExitCode(int number, String meaning) {
    this.number = number;
    this.meaning = meaning;
  }

  /** How a backup or a restore ends that cannot go on. */
  static ExitCode of(KeepRefused.Why why) {
    return switch (why) {
      case DAMAGED, DIFFERS -> DAMAGED_BACKUP;
      case NEWER -> NEWER_SCHEMA;
      case NOT_EMPTY -> CLUB_IS_THERE;
      case IN_USE -> HOME_IN_USE;
      case DATABASE -> NO_DATABASE;
      case FILE -> WRONG_SETTING;
    };
  }

  /** The number the shell sees. */
  public int number() {
    return number;
  }

  /** The same for people, as the manual page says it. */
  String meaning() {
    return meaning;
  }
}
