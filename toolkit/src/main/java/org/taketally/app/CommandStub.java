package org.taketally.app;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;

/**
 * A command that what was typed doesn't name: its name and what it does, which is all that a list
 * of commands shows. Looking at the options of all commands takes longer than all else at the
 * start.
 */
final class CommandStub {

  private CommandStub() {}

  /**
   * The command with its options if what was typed may mean it, else its name alone.
   *
   * @param command class of the command
   * @param arguments as typed; a name in a file of arguments ({@code @file}) can't be known yet
   */
  static CommandLine orWhole(Class<?> command, List<String> arguments) {
    String name = command.getAnnotation(Command.class).name();
    boolean meant =
        arguments.contains(name) || arguments.stream().anyMatch(typed -> typed.startsWith("@"));
    return new CommandLine(meant ? command : of(command));
  }

  private static CommandSpec of(Class<?> command) {
    Command told = command.getAnnotation(Command.class);
    CommandSpec spec = CommandSpec.wrapWithoutInspection(new Object()).name(told.name());
    spec.usageMessage().description(told.description());
    return spec;
  }
}
