package org.taketally.answers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.answers.ErrorRates.Result;
import org.taketally.answers.Trial.Layout;
import org.taketally.answers.Trial.Pattern;
import org.taketally.answers.ValidationPage.Share;
import org.taketally.answers.VerdictStudy.Counts;
import org.taketally.answers.VerdictStudy.Range;
import org.taketally.answers.verdict.Verdict;

/**
 * Verdicts are wrong, and ranges miss, no more often than promised. The study takes about an hour
 * and runs with {@code -Pslow}; every build checks what it found and repeats a small part.
 */
class ErrorRatesTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  private static final Path RESULTS =
      ROOT.resolve("toolkit/src/test/resources/validation/error-rates.csv");
  private static final Path PAGE = ROOT.resolve("docs/validation.md");
  private static final double PROMISED = 0.05;

  private static List<Result> results() {
    return ErrorRates.read(RESULTS);
  }

  @Test
  void page_says_what_the_study_found() throws IOException {
    String table =
        Files.readAllLines(ROOT.resolve("docs/validation-draws.md")).stream()
            .filter(line -> line.startsWith("|"))
            .collect(Collectors.joining("\n", "", "\n"));
    String text = new ValidationPage(results(), table).text();
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, text);
    }
    assertThat(Files.readString(PAGE)).isEqualTo(text);
  }

  @Test
  void the_study_is_the_design() {
    assertThat(results())
        .extracting(Result::trial)
        .isEqualTo(ErrorRates.design().stream().map(ErrorRates.Kind::trial).toList());
  }

  /** Over all kinds of trial, and in each as far as its trials can tell. */
  @Test
  void false_verdicts_are_as_rare_as_promised() {
    ValidationPage page = new ValidationPage(results(), "");
    assertThat(page.falseMatters().rate()).isLessThanOrEqualTo(PROMISED);
    assertThat(page.falseNoDifference().rate()).isLessThanOrEqualTo(PROMISED);
    for (Result result : results()) {
      int wrong = 0;
      if (result.trial().gap() == 0) {
        wrong = ValidationPage.differenceClaimed(result.counts());
      } else if (result.trial().gap() >= ErrorRates.MARGIN) {
        wrong = ValidationPage.noDifferenceClaimed(result.counts());
      }
      Share share = new Share(wrong, result.counts().trials);
      assertThat(share.likely().low()).as("%s", result.trial()).isLessThanOrEqualTo(PROMISED);
    }
  }

  @ParameterizedTest
  @EnumSource(Range.class)
  void ranges_hold_the_truth_as_often_as_they_say(Range range) {
    double says = range == Range.ONE_PAIR ? 0.90 : 0.95;
    assertThat(new ValidationPage(results(), "").covered(range).rate())
        .isBetween(says - 0.02, says + 0.02);
  }

  /** A part of the study small enough for every build: 30 trials of three kinds. */
  @Test
  void a_few_trials_go_as_the_study_says() {
    Counts alike = run(2, 800, 0, 30);
    assertThat(alike.of(Verdict.MATTERS)).isLessThanOrEqualTo(5);
    Counts apart = run(2, 800, 0.25, 30);
    assertThat(apart.of(Verdict.MATTERS)).isGreaterThanOrEqualTo(28);
    assertThat(apart.of(Verdict.NO_PRACTICAL_DIFFERENCE)).isZero();
    Counts many = run(2, 4000, 0, 20);
    assertThat(many.of(Verdict.NO_PRACTICAL_DIFFERENCE)).isGreaterThanOrEqualTo(15);
    assertThat(alike.inside(Range.CULTIVAR)).isGreaterThanOrEqualTo(210); // of 240, 228 expected
  }

  private static Counts run(int stocks, int grafts, double gap, int times) {
    Trial trial = new Trial(stocks, grafts, Layout.EVEN, Pattern.ONE_BAD, gap);
    return VerdictStudy.run(trial, times, 7, ErrorRates.OPTIONS);
  }

  @Tag("slow")
  @Test
  void the_study_gives_what_is_kept() throws IOException {
    String found =
        ErrorRates.design().stream()
            .map(kind -> ErrorRates.line(new Result(kind.trial(), kind.run())))
            .collect(Collectors.joining("\n", ErrorRates.header() + "\n", "\n"));
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(RESULTS, found);
    }
    assertThat(Files.readString(RESULTS)).isEqualTo(found);
  }
}
