package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/** Columns of records are named by their enum, never by a text that a renaming would miss. */
class ColumnNamesTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Path SOURCES = ROOT.resolve("toolkit/src/main/java/org/taketally");

  /** Comments, and texts that hold one word. */
  private static final Pattern TOKEN =
      Pattern.compile("(?s)/\\*.*?\\*/|//[^\\n]*|\"\"\".*?\"\"\"|\"((?:\\\\.|[^\"\\\\\\n])*)\"");

  /** Names of our outputs, which stay when a column is renamed. */
  private static final Pattern OUTPUT =
      Pattern.compile("(?s).*(addProperty|requireLength|Words\\.count)\\([^;]*");

  /** Files in which such a word is something else. */
  private static final Map<String, String> ELSE =
      Map.ofEntries(
          Map.entry("plan/order/OrderBook.java", "headings of a sheet of orders"),
          Map.entry("plan/order/ListLine.java", "headings of a sheet of orders"),
          Map.entry("plan/order/BudwoodRequests.java", "headings of a sheet of budwood"),
          Map.entry("plan/layout/LayoutPlan.java", "words of messages"),
          Map.entry("analysis/AnswerRegister.java", "keys of answers"),
          Map.entry("publish/SeasonCsv.java", "kinds of rows of the season's CSV"),
          Map.entry("publish/CheckPage.java", "sections of a page"),
          Map.entry("publish/ResultSections.java", "sections of a page"),
          Map.entry("publish/SummaryOptions.java", "names of parameters"),
          Map.entry("publish/privacy/PublishedBefore.java", "headings of what was published"));

  private static final Set<String> COLUMNS =
      Stream.concat(
              Stream.of(RecordColumn.values()).map(RecordColumn::columnName),
              Stream.of(DerivedColumn.values()).map(DerivedColumn::columnName))
          .collect(Collectors.toSet());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "cells",
        "model",
        "answers",
        "plan",
        "watch",
        "analysis",
        "figure",
        "publish",
        "notebook/display",
        "app"
      })
  void are_named_by_their_enum(String room) throws IOException {
    List<String> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(SOURCES.resolve(room))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String name = SOURCES.relativize(file).toString().replace('\\', '/');
        if (!ELSE.containsKey(name)) {
          named(Files.readString(file)).forEach(text -> found.add(name + ": " + text));
        }
      }
    }
    assertThat(found).as("write RecordColumn.X.columnName() instead").isEmpty();
  }

  @Test
  void sees_a_column_but_not_an_output() {
    assertThat(named("cells.factor(\"rootstock\").levels();")).containsExactly("rootstock");
    assertThat(named("List.of(\"grafting_day\", \"bed\");")).containsExactly("grafting_day");
    assertThat(named("json.addProperty(\"grafts\", cells.graftsTotal());")).isEmpty();
    assertThat(named("/** \"cultivar\" */ int i; // \"site\"\nString s = \"the cultivar\";"))
        .isEmpty();
  }

  private static List<String> named(String source) {
    List<String> found = new ArrayList<>();
    Matcher tokens = TOKEN.matcher(source);
    while (tokens.find()) {
      String text = tokens.group(1);
      if (text != null && COLUMNS.contains(text)) {
        String before = source.substring(0, tokens.start());
        int start = Math.max(before.lastIndexOf(';'), before.lastIndexOf('{'));
        if (!OUTPUT.matcher(before.substring(start + 1)).matches()) {
          found.add(text);
        }
      }
    }
    return found;
  }
}
