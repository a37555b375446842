package org.taketally.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.taketally.files.StandardOutput;
import org.taketally.files.Terminal;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line's entry point. */
@Command(
    name = "taketally",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    description =
        "Reads, checks, analyses and publishes graft records; plans trials and orders; watches"
            + " seasons.",
    footer = "%nEvery command prints its options with --help and works without a network.")
public final class Taketally implements Runnable {

  private static final List<Class<?>> COMMANDS =
      List.of(
          DemoCommand.class,
          CheckCommand.class,
          AnalyseCommand.class,
          SummaryCommand.class,
          PackageCommand.class,
          PlanCommand.class,
          OrderCommand.class,
          WatchCommand.class,
          NotebookCommand.class,
          DictionaryCommand.class,
          CropCommand.class,
          BenchCommand.class);

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** For picocli. */
  public Taketally() {}

  /**
   * Runs a command and ends the process with its exit status.
   *
   * @param arguments as typed
   */
  public static void main(String[] arguments) {
    CommandLine commands = commandLine(List.of(arguments));
    int status = execute(commands, arguments);
    commands.getOut().flush();
    System.exit(printedWhole(status, StandardOutput.ofProcess(), commands));
  }

  /** The same status, unless something that was to be printed is lost, which is said. */
  static int printedWhole(int status, StandardOutput out, CommandLine commands) {
    Optional<String> lost = out.lost();
    lost.ifPresent(
        why -> {
          commands
              .getErr()
              .println(
                  "taketally: standard output: found that not all could be written (%s), expected room for it; make room or name another place, and run the command again"
                      .formatted(why));
          commands.getErr().flush();
        });
    return lost.isPresent() && status == ExitStatus.FINE ? ExitStatus.USAGE : status;
  }

  /** Runs a command; too little memory is told in a sentence like everything else. */
  static int execute(CommandLine commands, String... arguments) {
    try {
      return commands.execute(arguments);
    } catch (OutOfMemoryError tooMany) {
      commands
          .getErr()
          .println(
              "taketally: these records need more memory than the %d MB Java may take; give it more, for example java -Xmx8g -jar taketally.jar ..., or name the model, so that analyse needn't hold the rows"
                  .formatted(Runtime.getRuntime().maxMemory() >> 20));
      commands.getErr().flush();
      return ExitStatus.CANNOT_BE_COMPUTED;
    }
  }

  /** All commands with all options. */
  static CommandLine commandLine() {
    return with(COMMANDS.stream().map(CommandLine::new));
  }

  /** What answers to these arguments, and starts sooner than all commands would. */
  static CommandLine commandLine(List<String> arguments) {
    return with(COMMANDS.stream().map(command -> CommandStub.orWhole(command, arguments)));
  }

  private static CommandLine with(Stream<CommandLine> subcommands) {
    CommandLine commands = new CommandLine(new Taketally());
    subcommands.forEach(own -> commands.addSubcommand(own));
    commands
        .setExecutionExceptionHandler(new Failures())
        .setParameterExceptionHandler(new TypingErrors())
        .registerConverter(int.class, new TypedValues.Whole())
        .registerConverter(Integer.class, new TypedValues.Whole())
        .registerConverter(double.class, new TypedValues.Decimal())
        .registerConverter(Double.class, new TypedValues.Decimal())
        .registerConverter(LocalDate.class, new TypedValues.Day())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpAutoWidth(true)
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    return commands.setOut(Terminal.on(commands.getOut())).setErr(Terminal.on(commands.getErr()));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
