package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pages and figures lay out what the room wording says: no text of theirs is a heading, a word of a
 * key or part of a sentence, and their templates hold none either.
 */
class WordsInOneRoomTest {

  private static final Path MAIN =
      Path.of(System.getProperty("taketally.root", "..")).resolve("toolkit/src/main");

  private static final Pattern TOKEN =
      Pattern.compile(
          "(?s)/\\*.*?\\*/|//[^\\n"
              + "]*|\"\"\".*?\"\"\"|\"(?:\\\\.|[^\"\\\\\\n"
              + "])*\"|'(?:\\\\.|[^'\\\\\\n"
              + "])*'");

  /** Two words side by side, or one that begins as a heading does, or stands beside a space. */
  private static final Pattern SAID =
      Pattern.compile("\\p{L}{2,}[,;:.]? +%?[\\p{L}%]|^\\p{Lu}\\p{Ll}+|^ \\p{L}{2,}|\\p{L}{2,} $");

  /** Families of letters, which every SVG names. */
  private static final String FONTS = "sans-serif\"";

  @ParameterizedTest
  @ValueSource(strings = {"publish", "figure"})
  void only_the_room_wording_speaks(String room) throws IOException {
    List<String> found = new ArrayList<>();
    for (Path file : files(MAIN.resolve("java/org/taketally").resolve(room), ".java")) {
      for (String text : said(Files.readString(file))) {
        found.add(file.getFileName() + ": " + text);
      }
    }
    assertThat(found).as("words belong into the room wording").isEmpty();
  }

  @Test
  void templates_hold_no_words() throws IOException {
    for (Path file : files(MAIN.resolve("resources/org/taketally/publish"), ".mustache")) {
      String text = Files.readString(file);
      String outside =
          text.replaceAll("(?s)<style>.*?</style>", "")
              .replaceAll("\\{\\{\\{?.*?}}}?", "")
              .replaceAll("<[^>]*>", "");
      assertThat(outside).as("text of " + file.getFileName()).doesNotContainPattern("\\p{L}{2,}");
      assertThat(text)
          .as("labels of " + file.getFileName())
          .doesNotContainPattern("(aria-label|alt|title)=\"[^\"{]");
    }
  }

  @Test
  void sees_words_but_neither_names_nor_messages() {
    assertThat(said("new Section(\"in-short\", \"In short\", blocks)")).hasSize(1);
    assertThat(said("List.of(\"Cultivar\", \"Grafts\")")).hasSize(2);
    assertThat(said("count + \" of the grafts took\"")).hasSize(1);
    assertThat(said("x.with(\"fill\", \"none\").with(\"stroke-dasharray\", \"5 4\")")).isEmpty();
    assertThat(said("throw new IllegalArgumentException(\"take must be above 0\" + x);")).isEmpty();
    assertThat(said("// \"Says so\"\n/** \"so does this one\" */ int i;")).isEmpty();
  }

  private static List<Path> files(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> found = files.filter(f -> f.toString().endsWith(ending)).sorted().toList();
      assertThat(found).isNotEmpty();
      return found;
    }
  }

  private static List<String> said(String source) {
    List<String> found = new ArrayList<>();
    Matcher tokens = TOKEN.matcher(source);
    while (tokens.find()) {
      String text = tokens.group();
      if (text.startsWith("\"")
          && SAID.matcher(text.substring(1, text.length() - 1)).find()
          && !text.endsWith(FONTS)
          && !isMessage(source.substring(0, tokens.start()))) {
        found.add(text);
      }
    }
    return found;
  }

  /** Whether the statement so far throws something. */
  private static boolean isMessage(String before) {
    int start = Math.max(before.lastIndexOf(';'), before.lastIndexOf('}'));
    return before.substring(start + 1).matches("(?s).*\\bnew \\w*(Exception|Error)\\b.*");
  }
}
