package org.taketally.app;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line's entry point. */
@Command(
    name = "taketally",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Plans, checks, analyses, watches and publishes graft records.",
    subcommands = {BenchCommand.class, NotebookCommand.class})
public final class Taketally implements Runnable {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** For picocli. */
  public Taketally() {}

  /**
   * Runs a command and ends the process with its exit status.
   *
   * @param arguments as typed
   */
  public static void main(String[] arguments) {
    System.exit(new CommandLine(new Taketally()).execute(arguments));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
