package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Links between the pages of the project lead somewhere, and each decision is in the index. */
class DocsTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)(#[^)]*)?\\)");
  private static final Pattern WEB = Pattern.compile("[a-z]+:.*");

  static List<Path> pages() throws IOException {
    List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
    for (String folder : List.of("docs", "notebooks", "datasets")) {
      try (Stream<Path> files = Files.walk(ROOT.resolve(folder))) {
        files
            .filter(file -> file.toString().endsWith(".md"))
            .filter(file -> !file.toString().contains(".ipynb_checkpoints"))
            .map(ROOT::relativize)
            .sorted()
            .forEach(pages::add);
      }
    }
    return pages;
  }

  @ParameterizedTest
  @MethodSource("pages")
  void links_lead_to_files_that_are_there(Path page) throws IOException {
    List<String> lost =
        LINK.matcher(Files.readString(ROOT.resolve(page)))
            .results()
            .map(found -> found.group(1))
            .filter(link -> !WEB.matcher(link).matches())
            .filter(link -> !Files.exists(ROOT.resolve(page).resolveSibling(link)))
            .toList();
    assertThat(lost).as("links in " + page).isEmpty();
  }

  @Test
  void each_decision_is_in_the_index_once_by_its_number() throws IOException {
    Path folder = ROOT.resolve("docs/decisions");
    List<String> listed =
        LINK.matcher(Files.readString(folder.resolve("README.md")))
            .results()
            .map((MatchResult found) -> found.group(1))
            .toList();
    try (Stream<Path> files = Files.list(folder)) {
      List<String> there =
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> name.matches("\\d{4}-.*\\.md"))
              .sorted()
              .toList();
      assertThat(listed).containsExactlyElementsOf(there);
      assertThat(there.stream().map(name -> name.substring(0, 4))).doesNotHaveDuplicates();
    }
  }
}
