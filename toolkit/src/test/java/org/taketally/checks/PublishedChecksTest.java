package org.taketally.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;

/** Our values against every published answer, and the page that shows them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PublishedChecksTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root"), "docs", "published-checks.md");

  private final List<PublishedChecksPage.Line> lines = new ArrayList<>();

  /** One test per covered answer, named after it; tolerances and reasons stand in the source. */
  @TestFactory
  List<DynamicTest> agrees_with_published_answers() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Check check : PublishedChecks.withAllSources().all()) {
      if (check.isComputed()) {
        tests.add(dynamicTest(check.answer().key(), () -> runAndCompare(check)));
      } else {
        tests.add(dynamicTest(check.answer().key() + " (not covered)", () -> leaveOut(check)));
      }
    }
    tests.add(dynamicTest("docs/published-checks.md shows this run", this::comparePage));
    return tests;
  }

  private void runAndCompare(Check check) {
    Check.Outcome outcome = check.run();
    lines.add(new PublishedChecksPage.Line(check, outcome));
    assertThat(outcome.faults()).as(check.answer().toString()).isEmpty();
  }

  private void leaveOut(Check check) {
    lines.add(new PublishedChecksPage.Line(check, new Check.Outcome("", List.of())));
  }

  private void comparePage() throws IOException {
    String text = PublishedChecksPage.text(lines);
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, text);
    }
    assertThat(PAGE).as("rewrite with -Dgolden=write").hasContent(text);
  }
}
