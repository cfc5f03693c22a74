package club.emberwell.launch;

import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Spec;

/** The manual page, written from the command line's own model in the man macros of roff. */
@Command(
    name = "man",
    description = "Prints the manual page, for man -l.",
    mixinStandardHelpOptions = true)
final class Manual implements Callable<Integer> {
  private static final String SETTINGS =
      """
      .SH ENVIRONMENT
      Every setting has a variable of its own: emberwell.env beside the program lists them with their
      defaults. An option counts before a variable, a variable before the file of the home.
      .SH FILES
      .TP
      .I HOME/emberwell.properties
      Settings of this home, in lower case with dots.
      .TP
      .I HOME/club\\-id
      Which club this home belongs to; the database says the same.
      .TP
      .I HOME/postgres
      The built\\-in database, where no other one is named.
      .TP
      .I HOME/index
      The search index; deleting it costs a rebuild and nothing else.
      """;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    spec.commandLine().getOut().print(page(spec.root()));
    spec.commandLine().getOut().flush();
    return ExitCode.STOPPED.number();
  }

  static String page(CommandSpec program) {
    return """
    .TH %s 1 "" "%s"
    .SH NAME
    %s \\- %s
    .SH SYNOPSIS
    .B %s
    [\\fIOPTION\\fR]... [\\fICOMMAND\\fR] [\\fIOPTION\\fR]...
    .SH DESCRIPTION
    %s
    .SH OPTIONS
    Options may stand before or after the command.
    %s.SH COMMANDS
    %s%s.SH EXIT STATUS
    %s"""
        .formatted(
            program.name().toUpperCase(Locale.ROOT),
            escaped(program.version()[0].split(",")[0]),
            escaped(program.name()),
            escaped(described(program).replaceFirst("\\.$", "")),
            escaped(program.name()),
            escaped(described(program)),
            program.options().stream().map(Manual::option).collect(Collectors.joining()),
            commands(program).map(Manual::command).collect(Collectors.joining()),
            SETTINGS,
            Arrays.stream(ExitCode.values()).map(Manual::exit).collect(Collectors.joining()));
  }

  private static Stream<CommandSpec> commands(CommandSpec program) {
    return program.subcommands().values().stream().map(each -> each.getCommandSpec()).distinct();
  }

  private static String described(CommandSpec spec) {
    return String.join(" ", spec.usageMessage().description());
  }

  private static String option(OptionSpec option) {
    String value = option.arity().max() == 0 ? "" : "=\\fI" + label(option) + "\\fR";
    String names =
        Arrays.stream(option.names())
            .map(name -> "\\fB" + escaped(name) + "\\fR")
            .collect(Collectors.joining(", "));
    return entry(names + value, String.join(" ", option.description()));
  }

  private static String command(CommandSpec command) {
    String parameters =
        command.positionalParameters().stream()
            .filter(each -> !each.hidden())
            .map(each -> " \\fI" + label(each) + "\\fR")
            .collect(Collectors.joining());
    String explained =
        command.positionalParameters().stream()
            .map(PositionalParamSpec::description)
            .flatMap(Arrays::stream)
            .map(each -> " " + each)
            .collect(Collectors.joining());
    return entry(
        "\\fB" + escaped(command.name()) + "\\fR" + parameters, described(command) + explained);
  }

  private static String exit(ExitCode code) {
    return entry("\\fB" + code.number() + "\\fR", code.meaning());
  }

  private static String entry(String term, String text) {
    return ".TP\n" + term + "\n" + escaped(text) + "\n";
  }

  private static String label(ArgSpec argument) {
    return escaped(argument.paramLabel().replaceAll("[<>]", "").toUpperCase(Locale.ROOT));
  }

  /** Backslashes, hyphens and leading dots mean something else in roff. */
  private static String escaped(String text) {
    return text.replace("\\", "\\e").replace("-", "\\-").replaceAll("(?m)^([.'])", "\\\\&$1");
  }
}
