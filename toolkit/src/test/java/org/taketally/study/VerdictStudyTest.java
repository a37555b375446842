package org.taketally.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The study of verdicts is what its page says, and a small part of it comes out the same again. */
class VerdictStudyTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Path RESULTS =
      ROOT.resolve("toolkit/src/test/resources/validation/verdict-study.csv");
  private static final Path PAGE = ROOT.resolve("docs/validation.md");
  private static final int REPEATED = 2;

  private static List<StudySummary.Row> rows() throws IOException {
    return StudySummary.read(Files.readAllLines(RESULTS));
  }

  @Test
  void page_says_what_the_study_found() throws IOException {
    String draws =
        Files.readAllLines(ROOT.resolve("docs/validation-draws.md")).stream()
            .filter(line -> line.startsWith("|"))
            .collect(Collectors.joining("\n", "", "\n"));
    String text = new StudyPage(rows(), draws).text();
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, text);
    }
    assertThat(Files.readString(PAGE)).isEqualTo(text);
  }

  @Test
  void every_result_is_of_a_kind_of_the_study() throws IOException {
    assertThat(rows().stream().mapToInt(row -> row.trials().size()).sum())
        .isEqualTo(Files.readAllLines(RESULTS).size());
  }

  /** Draws are the same on every machine, so verdicts are. */
  @ParameterizedTest
  @ValueSource(strings = {"crossover alike", "day-each alike", "days-3 at margin"})
  void a_few_trials_come_out_as_in_the_study(String name) throws IOException {
    StudySummary.Row row =
        rows().stream().filter(r -> r.kind().name().equals(name)).findFirst().orElseThrow();
    for (StudyTrial kept : row.trials().subList(0, REPEATED)) {
      StudyTrial again = StudyTrial.run(row.kind(), kept.number());
      assertThat(again.verdict()).as("%s %d", name, kept.number()).isEqualTo(kept.verdict());
      assertThat(again.inside()).as("%s %d", name, kept.number()).isEqualTo(kept.inside());
    }
  }
}
