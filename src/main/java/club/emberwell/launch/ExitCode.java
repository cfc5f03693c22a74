package club.emberwell.launch;

/** How the process ends; scripts and service managers may rely on these numbers. */
public enum ExitCode {
  STOPPED(0, "Stopped as asked."),
  FAILED(1, "Something failed that has no code of its own."),
  WRONG_SETTING(2, "A setting or an argument is wrong."),
  NEWER_SCHEMA(3, "The database was written by a newer version of the program."),
  NO_DATABASE(4, "No database answers."),
  HOME_IN_USE(5, "Another server runs on the same home."),
  OTHER_CLUB(6, "The database is not the one of the club that the home belongs to.");

  private final int number;
  private final String meaning;

  ExitCode(int number, String meaning) {
    this.number = number;
    this.meaning = meaning;
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
