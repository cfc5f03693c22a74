package club.emberwell.launch;

/** How the process ends; scripts and service managers may rely on these numbers. */
public enum ExitCode {
  /** Stopped as asked. */
  STOPPED(0),
  /** Something failed that has no code of its own. */
  FAILED(1),
  /** A setting or an argument is wrong. */
  WRONG_SETTING(2),
  /** The database was written by a newer version of the program. */
  NEWER_SCHEMA(3),
  /** No database answers. */
  NO_DATABASE(4),
  /** Another server runs on the same home. */
  HOME_IN_USE(5);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  /** The number the shell sees. */
  public int number() {
    return number;
  }
}
