package org.taketally.answers;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.answers.Trial.Layout;
import org.taketally.answers.Trial.Pattern;
import org.taketally.answers.VerdictStudy.Counts;
import org.taketally.answers.VerdictStudy.Range;
import org.taketally.answers.verdict.Verdict;

/** The design of the study of error rates, and its results as rows of a file. */
final class ErrorRates {

  /** Margin of all trials, points of take. */
  static final double MARGIN = 0.10;

  /** Draws a trial; the usual 2,000 change no verdict that isn't on the edge. */
  static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(1000);

  private static final long SEEDS_APART = 1_000_000;
  private static final double[] GAPS = {0, MARGIN / 2, MARGIN, 2 * MARGIN};

  private ErrorRates() {}

  /**
   * One kind of trial.
   *
   * @param trial what is simulated
   * @param times how often
   * @param seed of the first, the next ones following
   */
  record Kind(Trial trial, int times, long seed) {
    Counts run() {
      return VerdictStudy.run(trial, times, seed, OPTIONS);
    }
  }

  /** What came of one kind of trial. */
  record Result(Trial trial, Counts counts) {}

  static List<Kind> design() {
    List<Trial> trials = new ArrayList<>();
    int[][] even = {{2, 300}, {2, 800}, {4, 300}, {4, 800}, {4, 2500}};
    int[][] uneven = {{4, 300}, {4, 800}, {6, 2500}};
    add(trials, even, Layout.EVEN);
    add(trials, uneven, Layout.UNEVEN);
    add(trials, new int[][] {{4, 800}}, Layout.BY_DAY);
    trials.add(new Trial(4, 800, Layout.EVEN, Pattern.STEPS, MARGIN));
    trials.add(new Trial(6, 2500, Layout.UNEVEN, Pattern.STEPS, MARGIN));
    List<Kind> kinds = new ArrayList<>();
    for (Trial trial : trials) {
      kinds.add(new Kind(trial, times(trial), SEEDS_APART * (kinds.size() + 1)));
    }
    return kinds;
  }

  /** Most where a verdict can be false, fewer where a trial takes long. */
  private static int times(Trial trial) {
    boolean couldBeFalse = trial.gap() == 0 || trial.gap() == MARGIN;
    int times = couldBeFalse ? 200 : 100;
    return trial.stocks() == 6 ? times / 2 : times;
  }

  private static void add(List<Trial> trials, int[][] sizes, Layout layout) {
    for (int[] size : sizes) {
      for (double gap : GAPS) {
        trials.add(new Trial(size[0], size[1], layout, Pattern.ONE_BAD, gap));
      }
    }
  }

  static String header() {
    List<String> names = new ArrayList<>(List.of("stocks", "grafts", "layout", "pattern", "gap"));
    names.add("trials");
    names.add("named");
    for (Verdict verdict : Verdict.values()) {
      names.add(verdict.name());
    }
    for (Range range : Range.values()) {
      names.add(range.name() + "_inside");
      names.add(range.name() + "_all");
    }
    return String.join(",", names);
  }

  static String line(Result result) {
    Trial trial = result.trial();
    Counts counts = result.counts();
    List<Object> values =
        new ArrayList<>(
            List.of(trial.stocks(), trial.grafts(), trial.layout(), trial.pattern(), trial.gap()));
    values.add(counts.trials);
    values.add(counts.named);
    for (Verdict verdict : Verdict.values()) {
      values.add(counts.of(verdict));
    }
    for (Range range : Range.values()) {
      values.add(counts.inside(range));
      values.add(counts.all(range));
    }
    return values.stream().map(Object::toString).collect(Collectors.joining(","));
  }

  static List<Result> read(Path file) {
    try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(file)) {
      return rows.stream().map(ErrorRates::result).toList();
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Result result(NamedCsvRecord row) {
    Trial trial =
        new Trial(
            whole(row, "stocks"),
            whole(row, "grafts"),
            Layout.valueOf(row.getField("layout")),
            Pattern.valueOf(row.getField("pattern")),
            Double.parseDouble(row.getField("gap")));
    Counts counts = new Counts();
    counts.trials = whole(row, "trials");
    counts.named = whole(row, "named");
    for (Verdict verdict : Verdict.values()) {
      counts.verdicts.put(verdict, whole(row, verdict.name()));
    }
    for (Range range : Range.values()) {
      counts.add(range, whole(row, range.name() + "_inside"), whole(row, range.name() + "_all"));
    }
    return new Result(trial, counts);
  }

  private static int whole(NamedCsvRecord row, String name) {
    return Integer.parseInt(row.getField(name));
  }

  /** Runs the whole design, or the kinds from a place on, and prints each row when it is done. */
  public static void main(String[] arguments) {
    int from = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 0;
    int step = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
    List<Kind> design = design();
    for (int i = from; i < design.size(); i += step) {
      System.out.println(i + "," + line(new Result(design.get(i).trial(), design.get(i).run())));
    }
  }
}
