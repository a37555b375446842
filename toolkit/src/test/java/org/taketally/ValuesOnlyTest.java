package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rooms of values say nothing to a user: no text in them has three words or more, but for the
 * messages of exceptions and assertions, and of problems of a line read.
 */
class ValuesOnlyTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));

  /** Comments, texts and single characters, so that none is taken for another. */
  private static final Pattern TOKEN =
      Pattern.compile(
          "(?s)/\\*.*?\\*/|//[^\\n"
              + "]*|\"\"\".*?\"\"\"|\"(?:\\\\.|[^\"\\\\\\n"
              + "])*\"|'(?:\\\\.|[^'\\\\\\n"
              + "])*'");

  private static final Pattern SENTENCE =
      Pattern.compile("[\\p{L}'%]+[ ,;:]+\\S*[\\p{L}'%]+[ ,;:]+\\S*[\\p{L}'%]+.*");

  /** Texts that nobody is shown, or that name a source. */
  private static final Map<String, String> NOT_SAID =
      Map.of(
          "\"a season to come\"", "a level never seen: its luck is drawn from its name",
          "\"planned trial, seed \"", "the source of made-up cells");

  @ParameterizedTest
  @ValueSource(strings = {"answers", "plan", "watch"})
  void says_nothing_in_words(String room) throws IOException {
    Path sources = ROOT.resolve("toolkit/src/main/java/org/taketally").resolve(room);
    List<String> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(sources)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        for (String text : sentences(Files.readString(file))) {
          found.add(sources.relativize(file) + ": " + text);
        }
      }
    }
    assertThat(found).as("words belong into the room wording").isEmpty();
  }

  @Test
  void sees_a_sentence_but_not_a_message() {
    assertThat(sentences("return \"Take falls by about %s\";")).hasSize(1);
    assertThat(sentences("String s = x + \" of the grafts took\";")).hasSize(1);
    assertThat(
            sentences("throw new IllegalArgumentException(\n \"take must be above 0, got \" + x);"))
        .isEmpty();
    assertThat(sentences("line.wrong(\"due\", \"a date as year-month-day\", remedy);")).isEmpty();
    assertThat(sentences("lines.add(\"a date as year-month-day\");")).hasSize(1);
    assertThat(sentences("// \"a comment says so\"\n/** \"so does this one\" */ int i;")).isEmpty();
    assertThat(sentences("return List.of(\"cultivar\", \"stock_condition\");")).isEmpty();
  }

  private static List<String> sentences(String source) {
    List<String> found = new ArrayList<>();
    Matcher tokens = TOKEN.matcher(source);
    while (tokens.find()) {
      String text = tokens.group();
      boolean said = text.startsWith("\"") && SENTENCE.matcher(text.substring(1)).find();
      said &= !text.matches("\"\\w+\\[.*") && !NOT_SAID.containsKey(text); // a record's own text
      if (said && !isMessage(source.substring(0, tokens.start()))) {
        found.add(text);
      }
    }
    return found;
  }

  /** Whether the statement so far throws something, or says what is wrong with a line. */
  private static boolean isMessage(String before) {
    int start = Math.max(before.lastIndexOf(';'), before.lastIndexOf('}'));
    String statement = before.substring(start + 1);
    return statement.matches("(?s).*\\bnew \\w*(Exception|Error|CannotFit|CannotPlan)\\b.*")
        || statement.matches("(?s).*(\\bnew Problem|\\bwrong|\\bline\\.\\w+)\\(.*")
        || statement.matches("(?s).*@see .*");
  }
}
