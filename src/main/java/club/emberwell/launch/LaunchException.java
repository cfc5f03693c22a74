package club.emberwell.launch;

/** The server cannot start or go on; the message is one sentence that says what to do about it. */
public final class LaunchException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final ExitCode exitCode;

  /** A refusal with the code the process ends with. */
  public LaunchException(ExitCode exitCode, String sentence) {
    super(sentence);
    this.exitCode = exitCode;
  }

  /** A refusal caused by something deeper. */
  public LaunchException(ExitCode exitCode, String sentence, Throwable cause) {
    super(sentence, cause);
    this.exitCode = exitCode;
  }

  /** What the process ends with. */
  public ExitCode exitCode() {
    return exitCode;
  }
}
