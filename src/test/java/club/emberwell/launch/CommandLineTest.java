package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Properties;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** What the program makes of its arguments, up to where it would start. */
class CommandLineTest {
  @TempDir Path home;

  private final StringWriter said = new StringWriter();

  /** The demo sets properties for the application it would start. */
  private final Properties before = (Properties) System.getProperties().clone();

  @AfterEach
  void restore() {
    System.setProperties(before);
  }

  private int run(String... arguments) {
    CommandLine line = Main.commandLine();
    line.setErr(new PrintWriter(said, true)).setOut(new PrintWriter(said, true));
    return line.execute(arguments);
  }

  @ParameterizedTest
  @ValueSource(strings = {"--port=notaport demo", "demo --port=notaport", "--port=notaport"})
  void anOptionCountsBeforeAndAfterTheVerb(String arguments) {
    assertEquals(ExitCode.WRONG_SETTING.number(), run((arguments + " --home=" + home).split(" ")));
    assertTrue(said.toString().contains("not notaport"), said.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"reset-link somebody --home=%s", "--home=%s reset-link somebody"})
  void aRescueNamesTheHomeItLookedAt(String arguments) {
    assertEquals(ExitCode.NO_DATABASE.number(), run(arguments.formatted(home).split(" ")));
    assertTrue(said.toString().contains(home.toString()), said.toString());
  }

  @Test
  void whatIsNotUnderstoodIsAWrongSettingWithTheUsage() {
    assertEquals(ExitCode.WRONG_SETTING.number(), run("demo", "--prot=8097"));
    assertTrue(said.toString().contains("--port"), said.toString());
  }
}
