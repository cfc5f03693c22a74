package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** What the program makes of its arguments, up to where it would start. */
@ExtendWith(OnACommandLine.class)
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
    CommandLine line = Main.commandLine(Map.of());
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

  @Test
  void theManualAndTheCompletionNameEveryVerbAndOption() throws Exception {
    run("man");
    String manual = said.toString().replace("\\-", "-");
    run("completion");
    String completion = said.toString().substring(manual.length());
    CommandSpec program = Main.commandLine(Map.of()).getCommandSpec();
    Stream<String> names =
        Stream.concat(
            program.subcommands().keySet().stream(),
            program.options().stream().map(OptionSpec::longestName));
    names.forEach(
        name -> {
          assertTrue(manual.contains("\\fB" + name + "\\fR"), name + " in " + manual);
          assertTrue(completion.contains(name), name + " in " + completion);
        });
    for (ExitCode code : ExitCode.values()) {
      assertTrue(manual.contains("\\fB" + code.number() + "\\fR\n" + code.meaning()), manual);
    }
  }

  @Test
  void theManualIsSetWithoutAWarning() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/groff")), "no groff here");
    run("man");
    Path page = Files.writeString(home.resolve("emberwell.1"), said.toString());
    Process groff =
        new ProcessBuilder("groff", "-man", "-ww", "-z", page.toString())
            .redirectErrorStream(true)
            .start();
    assertEquals("", new String(groff.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
  }
}
