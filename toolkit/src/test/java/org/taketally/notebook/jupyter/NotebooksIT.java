package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.taketally.notebook.jupyter.Jupyter.Ran;
import org.taketally.notebook.runner.Notebook;
import org.taketally.notebook.runner.NotebookCell;

/**
 * The notebooks of this project give what is saved in them, run by the runner and run by Jupyter's
 * own nbconvert with the installed kernel, and have the form docs/notebooks.md asks for. After a
 * wanted change: {@code -Dgolden=write} saves them anew.
 */
@Timeout(300)
class NotebooksIT {

  /**
   * Numbers of the notebooks that each build runs by nbconvert, too: tables with problems, checks
   * over many rows, own sheets with figures. The runner and nbconvert differ in what drives the
   * kernel, not in what a cell does; a browser runs number 3.
   */
  private static final Set<String> BY_BOTH = Set.of("1", "8", "9");

  private static final boolean SAVES = "write".equals(System.getProperty("golden"));

  private static final Path NOTEBOOKS = Jupyter.ROOT.resolve("notebooks");
  private static final int LONGEST_CELL = 12;

  /** A take or a difference, e.g. {@code 62 %}, {@code 4 to 11 points}. */
  private static final Pattern AMOUNT =
      Pattern.compile("(?:(\\d+(?:\\.\\d+)?) (?:to|and) )?(\\d+(?:\\.\\d+)?) (?:%|points)");

  /** What the words quote from elsewhere. */
  private static final Pattern ITALICS = Pattern.compile("(?<!\\*)\\*[^*\\s][^*]*\\*(?!\\*)");

  static List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(NOTEBOOKS)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".ipynb"))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  @Execution(ExecutionMode.CONCURRENT)
  void runner_gives_what_is_saved(String name) throws Exception {
    Path out = Jupyter.TARGET.resolve("notebooks-run");
    Path notebook = NOTEBOOKS.resolve(name);
    Ran ran =
        Jupyter.taketally(
            Jupyter.ROOT, "notebook", "run", notebook.toString(), "--out", out.toString());
    assertThat(ran.status()).as(ran.output()).isZero();
    if (SAVES) {
      save(out.resolve(name), notebook);
    }
    assertThat(texts(out.resolve(name))).isEqualTo(texts(notebook));
  }

  /** Whole at any time: other tests read it meanwhile. */
  private static void save(Path run, Path notebook) throws IOException {
    Path beside = Files.createTempFile(Jupyter.TARGET, "notebook", ".ipynb");
    Files.copy(run, beside, StandardCopyOption.REPLACE_EXISTING);
    Files.move(beside, notebook, StandardCopyOption.REPLACE_EXISTING);
  }

  static List<String> byBoth() throws IOException {
    return names().stream().filter(NotebooksIT::isRunByBoth).toList();
  }

  static List<String> others() throws IOException {
    return names().stream().filter(name -> !isRunByBoth(name)).toList();
  }

  private static boolean isRunByBoth(String name) {
    return BY_BOTH.contains(name.substring(0, name.indexOf('-')));
  }

  @ParameterizedTest
  @MethodSource("others")
  @Tag("slow")
  @Execution(ExecutionMode.CONCURRENT)
  void nbconvert_gives_what_is_saved_of_the_others(String name) throws Exception {
    nbconvert_with_the_installed_kernel_gives_what_is_saved(name);
  }

  @ParameterizedTest
  @MethodSource("byBoth")
  @Execution(ExecutionMode.CONCURRENT)
  void nbconvert_with_the_installed_kernel_gives_what_is_saved(String name) throws Exception {
    assumeFalse(SAVES, "saved anew by the runner at this moment");
    Path nbconvert = Path.of("/usr/bin/jupyter-nbconvert");
    Jupyter.require("Jupyter's nbconvert", nbconvert);
    Jupyter.kernel();
    Path out = Jupyter.TARGET.resolve("notebooks-nbconvert");
    Ran ran =
        Jupyter.run(
            Jupyter.ROOT,
            nbconvert.toString(),
            "--to",
            "notebook",
            "--execute",
            "--output-dir",
            out.toString(),
            NOTEBOOKS.resolve(name).toString());
    assertThat(ran.status()).as(ran.output()).isZero();
    assertThat(texts(out.resolve(name))).isEqualTo(texts(NOTEBOOKS.resolve(name)));
  }

  /** All that each cell gave as text, however it came in pieces. */
  private static List<String> texts(Path notebook) throws IOException {
    List<String> texts = new ArrayList<>();
    for (NotebookCell cell : Notebook.read(notebook).cells()) {
      if (cell.isCode()) {
        texts.add(cell.source() + "\n-->\n" + String.join("", cell.outputTexts()));
      }
    }
    return texts;
  }

  @ParameterizedTest
  @MethodSource("names")
  void has_the_form_of_the_house(String name) throws IOException {
    Notebook notebook = Notebook.read(NOTEBOOKS.resolve(name));
    assertThat(notebook.title()).endsWith("?");
    assertThat(notebook.parametersCell()).isPresent();
    List<NotebookCell> cells = notebook.cells();
    assertThat(cells.get(0).isCode()).isFalse();
    NotebookCell last = cells.get(cells.size() - 1);
    assertThat(last.source()).contains("## Verdict and limits");
    int count = 0;
    for (int i = 0; i < cells.size(); i++) {
      if (cells.get(i).isCode()) {
        count++;
        assertThat(cells.get(i).executionCount()).as("cell %d", i).contains(count);
        assertThat(cells.get(i).source().lines().count()).isLessThanOrEqualTo(LONGEST_CELL);
        assertThat(cells.get(i + 1).isCode()).as("words after cell %d", i).isFalse();
      }
    }
    assertThat(count).isGreaterThan(4);
  }

  /** So that words are not left behind when outputs change. */
  @ParameterizedTest
  @MethodSource("names")
  void every_amount_in_the_words_was_printed_above(String name) throws IOException {
    StringBuilder printed = new StringBuilder();
    List<String> unfounded = new ArrayList<>();
    for (NotebookCell cell : Notebook.read(NOTEBOOKS.resolve(name)).cells()) {
      if (cell.isCode()) {
        printed.append(String.join("\n", cell.outputTexts())).append('\n');
      } else if (!printed.toString().isBlank()) {
        amounts(cell.source()).filter(each -> !isIn(printed, each)).forEach(unfounded::add);
      }
    }
    assertThat(unfounded).as("what others print belongs in *italics*").isEmpty();
  }

  private static Stream<String> amounts(String words) {
    return AMOUNT
        .matcher(ITALICS.matcher(words).replaceAll(" "))
        .results()
        .flatMap(found -> Stream.of(found.group(1), found.group(2)))
        .filter(Objects::nonNull);
  }

  private static boolean isIn(CharSequence printed, String number) {
    String alone = "(?<![\\d.])" + Pattern.quote(number) + "(?!\\.?\\d)";
    return Pattern.compile(alone).matcher(printed).find();
  }
}
