package org.taketally.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.taketally.analysis.Analysis;
import org.taketally.records.CropProfiles;
import org.taketally.records.RecordsReader;

/** What is told of a long cell. */
@Timeout(120)
class DoingTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));

  @Test
  void an_analysis_is_told_step_by_step() throws Exception {
    RecordsReader reader = RecordsReader.defaults().withCrop(CropProfiles.named("walnut"));
    Path folder = ROOT.resolve("datasets/halden-bay-walnut");
    Thread work = new Thread(() -> Analysis.of(reader.readFolder(folder, "grafts-*.csv")));
    work.start();
    Set<String> told = new LinkedHashSet<>();
    while (work.isAlive()) {
      told.add(Doing.at(work.getStackTrace()));
      Thread.sleep(2);
    }
    assertThat(told)
        .contains("fitting the model", "Does the rootstock matter?")
        .allMatch(words -> words.length() < 80);
  }

  @Test
  void code_that_is_not_the_toolkits_is_not_named() {
    assertThat(Doing.at(Thread.currentThread().getStackTrace())).isEmpty();
    assertThat(Doing.at(new StackTraceElement[0])).isEmpty();
  }
}
