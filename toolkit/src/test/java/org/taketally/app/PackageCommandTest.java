package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code package} as a person types it. */
class PackageCommandTest {

  private static final Path COUNTS =
      Path.of(System.getProperty("taketally.root"), "datasets/historic-counts/hickory-1923");

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments);
  }

  private CommandRun pack(String licence) {
    return pack(licence, COUNTS.resolve("dictionary.json"));
  }

  private CommandRun pack(String licence, Path dictionary) {
    return run(
        "package",
        COUNTS.resolve("grafts.csv"),
        "--dictionary",
        dictionary,
        "--title",
        "Hickory 1923",
        "--by",
        "W. G. Bixby",
        "--licence",
        licence,
        "--vary-by",
        "cultivar",
        "--adjust-for",
        "rootstock",
        "--seed",
        "3",
        "--out",
        folder.resolve("open"));
  }

  @Test
  void writes_a_package_that_check_reads_back() throws IOException {
    CommandRun packed = pack("CC0-1.0");
    assertThat(packed.status()).as(packed.err()).isEqualTo(ExitStatus.FINE);
    assertThat(packed.out()).contains("described in", "ask your members");
    Path open = folder.resolve("open");
    var described =
        JsonParser.parseString(Files.readString(open.resolve("datapackage.json")))
            .getAsJsonObject();
    assertThat(described.getAsJsonObject("provenance").get("options").toString())
        .contains("\"package\",\"grafts.csv\",\"--dictionary\",\"dictionary.json\"")
        .doesNotContain(folder.getFileName().toString(), "\"open\"");
    assertThat(described.getAsJsonObject("provenance").get("seed").getAsInt()).isEqualTo(3);
    CommandRun checked =
        run("check", open.resolve("records.csv"), "--dictionary", open.resolve("dictionary.json"));
    assertThat(checked.status()).isEqualTo(ExitStatus.FINE);
    assertThat(checked.out()).contains("272 grafts assessed, 140 took");
  }

  /** As some terminals write what a command prints. */
  @Test
  void takes_a_dictionary_in_utf_16_along() throws IOException {
    String text = Files.readString(COUNTS.resolve("dictionary.json"));
    Path wide =
        Files.write(
            folder.resolve("dictionary.json"),
            ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE));
    CommandRun packed = pack("CC0-1.0", wide);
    assertThat(packed.status()).as(packed.err()).isEqualTo(ExitStatus.FINE);
  }

  @Test
  void asks_under_which_licence() {
    CommandRun mine = pack("mine");
    assertThat(mine.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(mine.err()).contains("found licence \"mine\", expected one of CC0-1.0, CC-BY-4.0");
    CommandRun bare = run("package", COUNTS.resolve("grafts.csv"));
    assertThat(bare.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(bare.err()).contains("--title", "--by", "--licence");
  }
}
