package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import org.taketally.files.WouldReplace;
import org.taketally.model.CannotFit;
import org.taketally.publish.NothingToPublish;
import org.taketally.records.problems.RecordsUnreadable;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns what went wrong into one sentence and an exit status; never a stack trace. */
final class Failures implements IExecutionExceptionHandler {

  @Override
  public int handleExecutionException(
      Exception failure, CommandLine commandLine, ParseResult parsed) {
    if (failure instanceof ParameterException wrong) {
      return say(commandLine, ExitStatus.USAGE, wrong.getMessage());
    }
    if (failure instanceof RecordsUnreadable unreadable) {
      return say(commandLine, ExitStatus.NEEDS_A_PERSON, unreadable.problem().sentence());
    }
    if (failure instanceof UnusableList) {
      return say(commandLine, ExitStatus.NEEDS_A_PERSON, failure.getMessage());
    }
    if (failure instanceof CannotFit
        || failure instanceof CannotCompute
        || failure instanceof NothingToPublish) {
      return say(commandLine, ExitStatus.CANNOT_BE_COMPUTED, failure.getMessage());
    }
    if (failure instanceof IllegalArgumentException wrong) {
      return say(commandLine, ExitStatus.USAGE, wrong.getMessage());
    }
    if (failure instanceof WouldReplace spared) {
      return say(commandLine, ExitStatus.USAGE, spared.getMessage());
    }
    if (failure instanceof UncheckedIOException hidden) {
      return say(commandLine, ExitStatus.USAGE, aboutFile(hidden.getCause()));
    }
    if (failure instanceof IOException file) {
      return say(commandLine, ExitStatus.USAGE, aboutFile(file));
    }
    return say(
        commandLine,
        ExitStatus.CANNOT_BE_COMPUTED,
        "this is a fault in Taketally, not in your records (%s); please report it with the command you typed"
            .formatted(failure));
  }

  private static String aboutFile(IOException failure) {
    return "can't read or write a file: %s; check the name, the folder, its permissions and the room left on the disk"
        .formatted(failure.getMessage());
  }

  private static int say(CommandLine commandLine, int status, String sentence) {
    PrintWriter err = commandLine.getErr();
    err.println("taketally: " + sentence);
    err.flush();
    return status;
  }
}
