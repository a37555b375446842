package org.taketally.answers;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLossCalculator;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** Late loss in a data set under {@code datasets}, read as a user's files are. */
public final class DemoCounts {

  private DemoCounts() {}

  public static Optional<LateLoss> lateLoss(String dataset) throws IOException {
    Path folder = Path.of(System.getProperty("taketally.root"), "datasets", dataset);
    TreeSet<Path> sheets = new TreeSet<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "grafts-*.csv")) {
      files.forEach(sheets::add);
    }
    RecordsReader reader = RecordsReader.defaults().withToday(LocalDate.of(2026, 6, 1));
    GraftRecords records = reader.read(List.copyOf(sheets));
    Assessments assessments =
        reader.assessments(List.of(folder.resolve("assessments.csv")), records);
    return LateLossCalculator.of(records, assessments, AnswerOptions.defaults());
  }
}
