package org.taketally.study;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdictCalculator;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.columns.RecordColumn;

/**
 * Runs the study, in parts if need be: each trial is one line appended to a results file, and a
 * trial whose line is there already is not run again.
 *
 * <pre>java org.taketally.study.StudyRun RESULTS.csv TRIALS [KIND...]</pre>
 *
 * <p>TRIALS of every kind are run whose name starts with one of the KINDs, all if none is named.
 */
final class StudyRun {

  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();

  private StudyRun() {}

  /** Runs what is missing. */
  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[0]);
    int trials = Integer.parseInt(arguments[1]);
    List<String> wanted = List.of(arguments).subList(2, arguments.length);
    Set<String> done =
        Files.exists(file)
            ? Files.readAllLines(file).stream().map(StudyRun::key).collect(Collectors.toSet())
            : Set.of();
    List<StudyKind> kinds =
        StudyKinds.all().stream()
            .filter(k -> wanted.isEmpty() || wanted.stream().anyMatch(k.name()::startsWith))
            .toList();
    for (int t = 0; t < trials; t++) {
      for (StudyKind kind : kinds) {
        if (!done.contains(kind.name() + "," + t)) {
          Files.writeString(
              file,
              StudyTrial.run(kind, t).line() + "\n",
              StandardOpenOption.CREATE,
              StandardOpenOption.APPEND);
        }
      }
    }
  }

  private static String key(String line) {
    return line.substring(0, line.indexOf(',', line.indexOf(',') + 1));
  }

  /** As {@link RootstockVerdictCalculator} decides it, without the answers beside it. */
  private static FactorVerdict verdict(TakeModel model, Cells cells, AnswerOptions options) {
    try {
      TakeFit fit = FallbackFit.of(cells, model.compare(ROOTSTOCK)).fit();
      MarginalTakes averaging = MarginalTakes.of(fit, options);
      return averaging.knows(ROOTSTOCK)
          ? FactorVerdictCalculator.of(averaging, ROOTSTOCK, options)
          : FactorVerdictCalculator.refused(fit.cells(), ROOTSTOCK, options);
    } catch (CannotFit noneOrAllTook) {
      return RootstockVerdictCalculator.ofTypeAlone(model, cells, options);
    }
  }

  /** The verdict by the usual way: a sheet, read, the suggested model, the compared column. */
  static FactorVerdict verdict(String csv, long seed) {
    try {
      Path sheet = Files.createTempFile("trial", ".csv");
      try {
        Files.writeString(sheet, csv);
        GraftRecords records =
            RecordsReader.defaults().withToday(LocalDate.of(2035, 1, 1)).read(List.of(sheet));
        TakeModel model = SuggestedModel.of(records).model();
        AnswerOptions options = AnswerOptions.defaults().withDraws(1000).withSeed(seed);
        return verdict(model, CellsOf.records(records, SuggestedModel.needed(model)), options);
      } finally {
        Files.delete(sheet);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
