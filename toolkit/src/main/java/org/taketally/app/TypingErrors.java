package org.taketally.app;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Says what was typed wrongly as the last thing on the screen, and where the options are listed.
 */
final class TypingErrors implements IParameterExceptionHandler {

  @Override
  public int handleParseException(ParameterException wrong, String[] arguments) {
    CommandLine command = wrong.getCommandLine();
    PrintWriter err = command.getErr();
    err.println("taketally: " + wrong.getMessage());
    UnmatchedArgumentException.printSuggestions(wrong, err);
    err.println(
        "\"%s --help\" lists what can be typed."
            .formatted(command.getCommandSpec().qualifiedName()));
    err.flush();
    return ExitStatus.USAGE;
  }
}
