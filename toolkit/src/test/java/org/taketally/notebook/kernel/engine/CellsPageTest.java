package org.taketally.notebook.kernel.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** docs/cells.md lists every function and command there is. */
class CellsPageTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root")).resolve("docs/cells.md");

  @Test
  void every_function_and_command_has_a_line() throws Exception {
    String page = Files.readString(PAGE);
    for (Method function : CellFunctions.class.getDeclaredMethods()) {
      if (Modifier.isPublic(function.getModifiers())) {
        assertThat(page).contains("`" + function.getName() + "(");
      }
    }
    assertThat(Commands.names()).hasSizeGreaterThan(10);
    for (String command : Commands.names()) {
      assertThat(page).containsPattern("`" + command + "[ `]");
    }
  }
}
