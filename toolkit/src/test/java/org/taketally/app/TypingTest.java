package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a person types wrongly, and texts they are given to edit. */
class TypingTest {

  private static final String SHEET = "Sorte;Unterlage;Anzahl;Angewachsen\nOrrin;Sämling;12;9\n";

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments);
  }

  @Test
  void an_unknown_option_is_named_last_with_the_nearest_one_and_where_to_look() {
    CommandRun outcome = run("analyse", "--margn", "5", "sheet.csv");
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err().lines().toList())
        .hasSizeLessThan(5)
        .first()
        .asString()
        .startsWith("taketally: ")
        .contains("--margn");
    assertThat(outcome.err())
        .contains("--margin")
        .endsWith("\"taketally analyse --help\" lists what can be typed.\n");
  }

  @Test
  void a_missing_file_is_said_in_a_sentence_without_the_whole_help() {
    CommandRun outcome = run("check", folder.resolve("grfts.csv"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err()).contains("grfts.csv").doesNotContain("--dictionary");
  }

  @Test
  void a_proposed_dictionary_is_written_in_utf_8_and_never_over_the_sheet() throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), SHEET);
    Path dictionary = folder.resolve("dictionary.json");
    assertThat(run("dictionary", "suggest", sheet, "--out", dictionary).status())
        .isEqualTo(ExitStatus.FINE);
    assertThat(Files.readString(dictionary, StandardCharsets.UTF_8))
        .contains("\"cultivar\": \"Sorte\"");
    CommandRun over = run("dictionary", "suggest", sheet, "--out", sheet, "--replace");
    assertThat(over.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(Files.readString(sheet)).isEqualTo(SHEET);
  }

  /** As Windows terminals and editors save text: UTF-16 either way round, UTF-8 with a mark. */
  @ParameterizedTest
  @ValueSource(strings = {"UTF-16", "UTF-16BE", "UTF-16LE", "UTF-8"})
  void a_dictionary_with_a_mark_is_read(String encoding) throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), SHEET);
    Path dictionary = folder.resolve("dictionary.json");
    run("dictionary", "suggest", sheet, "--out", dictionary);
    String text = Files.readString(dictionary);
    String mark = encoding.equals("UTF-16") ? "" : "\uFEFF"; // UTF-16 writes its own
    Files.write(dictionary, (mark + text).getBytes(Charset.forName(encoding)));
    CommandRun outcome = run("check", "--dictionary", dictionary, "--crop", "apple", sheet);
    assertThat(outcome.out()).contains("12 grafts assessed, 9 took");
  }

  @Test
  void a_crop_template_is_written_to_a_file() throws IOException {
    Path profile = folder.resolve("quince.csv");
    assertThat(run("crop", "template", "--like", "apple", "--out", profile).status())
        .isEqualTo(ExitStatus.FINE);
    assertThat(Files.readString(profile)).startsWith("item,value,unit,source\n");
  }
}
