package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** Whatever is typed, commands that weren't looked at in full answer as if they had been. */
class CommandStubTest {

  static Stream<List<String>> typed() {
    List<List<String>> all = new ArrayList<>();
    all.add(List.of());
    all.add(List.of("--help"));
    all.add(List.of("--version"));
    all.add(List.of("cheek"));
    all.add(List.of("--cultivar"));
    all.add(List.of("plan", "size", "--help"));
    all.add(List.of("plan", "sise"));
    all.add(List.of("check"));
    all.add(List.of("order", "check"));
    Taketally.commandLine().getSubcommands().keySet().forEach(c -> all.add(List.of(c, "--help")));
    return all.stream();
  }

  @ParameterizedTest
  @MethodSource("typed")
  void the_answer_is_that_of_all_commands_looked_at_in_full(List<String> typed) {
    CommandRun answer = answer(Taketally.commandLine(typed), typed);
    assertThat(answer.out() + answer.err()).isNotBlank();
    assertThat(answer).isEqualTo(answer(Taketally.commandLine(), typed));
  }

  @Test
  void a_command_named_in_a_file_of_arguments_is_found(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("arguments"), "plan size --take 80 --help");
    List<String> typed = List.of("@" + file);
    assertThat(answer(Taketally.commandLine(typed), typed).out()).contains("--other-take");
  }

  @Test
  void options_are_looked_at_only_where_named() {
    CommandLine commands = Taketally.commandLine(List.of("check", "sheet.csv"));
    assertThat(commands.getSubcommands().get("check").getCommandSpec().options()).isNotEmpty();
    assertThat(commands.getSubcommands().get("analyse").getCommandSpec().options()).isEmpty();
  }

  private static CommandRun answer(CommandLine commands, List<String> typed) {
    return CommandRun.of(commands, typed.toArray());
  }
}
