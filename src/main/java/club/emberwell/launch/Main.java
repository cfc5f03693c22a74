package club.emberwell.launch;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;

/** Starts the server. */
@QuarkusMain
public final class Main {
  private Main() {}

  /** Runs until the process is told to stop. */
  public static void main(String[] args) {
    Quarkus.run(args);
  }
}
