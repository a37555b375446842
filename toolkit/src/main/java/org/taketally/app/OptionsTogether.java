package org.taketally.app;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;

/** Options that make no sense as typed together; nothing typed is passed over in silence. */
final class OptionsTogether {

  private OptionsTogether() {}

  /** Refuses options that nothing would come of; {@code why} ends the sentence. */
  static void refuse(CommandLine command, String why, String... options) {
    List<String> typed = typed(command, options);
    if (!typed.isEmpty()) {
      throw new ParameterException(
          command,
          "%s%s %s".formatted(typed.size() > 1 ? "each of " : "", String.join(", ", typed), why));
    }
  }

  /** Those of the options that were typed. */
  static List<String> typed(CommandLine command, String... options) {
    return Arrays.stream(options).filter(command.getParseResult()::hasMatchedOption).toList();
  }

  /** Refuses a name given twice in an option of NAME=VALUE. */
  static void requireNamesOnce(CommandLine command, String option) {
    OptionSpec typed = command.getParseResult().matchedOption(option);
    if (typed == null) {
      return;
    }
    Set<String> names = new HashSet<>();
    for (String pair : typed.originalStringValues()) {
      for (String one : pair.split(",")) {
        String name = one.split("=", 2)[0];
        if (!names.add(name)) {
          throw new ParameterException(
              command,
              "%s: found \"%s\" twice, expected each name once; leave one of them out"
                  .formatted(option, name));
        }
      }
    }
  }
}
