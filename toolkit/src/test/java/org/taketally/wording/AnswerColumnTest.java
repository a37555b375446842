package org.taketally.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.taketally.wording.AnswerColumn.Kind;

/** docs/answer-columns.md is the glossary of columns, word for word. */
class AnswerColumnTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root"), "docs", "answer-columns.md");

  @Test
  void glossary_page_lists_every_column() throws IOException {
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, page());
    }
    assertThat(Files.readString(PAGE)).isEqualTo(page());
  }

  @Test
  void every_meaning_is_told_once() {
    assertThat(Arrays.stream(AnswerColumn.values()).map(AnswerColumn::heading))
        .doesNotHaveDuplicates();
  }

  private static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # Columns of the answer tables

            One word, one meaning, in every table of every answer. The name is used in CSV and Tablesaw; JSON has the same name in camel case (`take_low` is `takeLow`); the heading is what text and HTML show.

            Takes, shares, chances and differences of takes are fractions of 1 (0.63 is 63 %, 0.04 is 4 points) in CSV, JSON and Tablesaw. A "likely range" covers 95 % unless another level was asked for; of a gap that a verdict is about it is the range that decides the verdict.

            | name | heading | holds | meaning |
            |---|---|---|---|
            """);
    for (AnswerColumn column : AnswerColumn.values()) {
      page.append(
          "| `%s` | %s | %s | %s |%n"
              .replace("%n", "\n")
              .formatted(
                  column.columnName(), column.heading(), holds(column.kind()), column.meaning()));
    }
    return page.toString();
  }

  private static String holds(Kind kind) {
    return switch (kind) {
      case NAME -> "a name";
      case WORDS -> "words";
      case COUNT -> "a whole number";
      case TAKE -> "a take, 0 to 1";
      case SHARE -> "a share or chance, 0 to 1";
      case POINTS -> "a difference of takes, -1 to 1";
      case NUMBER -> "a number";
      case FLAG -> "yes or no";
    };
  }
}
