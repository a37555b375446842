package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/** Works out an {@link Analysis} from one fit and one set of draws. */
final class Answering {

  private static final String CULTIVAR = "cultivar";
  private static final String STORAGE = "storage_days";

  /** Above this the checks, which look at each cell many times, would double the time. */
  private static final int CHECKED_CELLS = 1_000_000;

  private final TakeFit fit;
  private final String compared;
  private final boolean asked;
  private final AnswerOptions options;
  private final Averaging averaging;
  private final List<Absent> absent = new ArrayList<>();

  Answering(TakeFit fit, Optional<String> compared, AnswerOptions options) {
    this.fit = fit;
    this.compared = compared.orElse("rootstock");
    this.asked = compared.isPresent();
    this.options = options;
    this.averaging = new Averaging(fit, options);
  }

  Analysis analysis(List<String> changes) {
    return new Analysis(
        fit,
        changes,
        rootstock(),
        difficulty(),
        Movers.of(averaging, options),
        storage(),
        grafters(),
        fitChecks(),
        Analysis.Beside.NOTHING,
        spreads(),
        withNotAsked(),
        options);
  }

  private Optional<RootstockVerdict> rootstock() {
    if (averaging.knows(compared)) {
      return Optional.of(RootstockVerdicts.of(averaging, compared, options));
    }
    if (levelsInUse(compared) > 1 && asked && leftOutByTheFit()) {
      return Optional.of(
          RootstockVerdict.of(FactorVerdicts.refused(fit.cells(), compared, options)));
    }
    absent.add(
        new Absent("Does the %s matter?".formatted(Words.column(compared)), noLevels(compared)));
    return Optional.empty();
  }

  /** The fit may have had to leave out the column in question: that is an answer too. */
  private boolean leftOutByTheFit() {
    return fit.model().compared().filter(compared::equals).isEmpty();
  }

  private Optional<Difficulty> difficulty() {
    if (averaging.knows(CULTIVAR)) {
      return Optional.of(Difficulties.of(averaging, options));
    }
    absent.add(new Absent(Difficulty.QUESTION, noLevels(CULTIVAR)));
    return Optional.empty();
  }

  private Optional<StorageCurve> storage() {
    if (averaging.knows(STORAGE) && fit.cells().findMeasure(STORAGE).isPresent()) {
      return Optional.of(StorageCurve.of(averaging, options, STORAGE));
    }
    absent.add(
        new Absent(
            "How does take change with storage days?",
            "Days of storage aren't in the model: they need the dates the budwood was cut and grafted,"
                + " for most grafts and with at least two different values."));
    return Optional.empty();
  }

  private Optional<FitChecks> fitChecks() {
    if (fit.cells().size() <= CHECKED_CELLS) {
      return Optional.of(FitChecks.of(averaging, options));
    }
    absent.add(
        new Absent(
            FitChecks.QUESTION,
            "Not checked: there are more than a million different patterns of records. Analyse a"
                + " season or a site at a time to have the fit checked."));
    return Optional.empty();
  }

  private Optional<Grafters> grafters() {
    if (averaging.knows(GrafterLabels.GRAFTER)) {
      return Optional.of(Grafters.of(averaging, options));
    }
    absent.add(new Absent(Grafters.QUESTION, noLevels(GrafterLabels.GRAFTER)));
    return Optional.empty();
  }

  /** What needs more than the records and the model comes after them. */
  private List<Absent> withNotAsked() {
    absent.add(
        new Absent(
            LateLoss.QUESTION,
            "One count of each graft can't tell. It takes a second file that says how many were alive"
                + " on two days or more: record, assessed_date, alive."));
    absent.add(
        new Absent(
            SecondOpinions.QUESTION,
            "Not asked for, as it takes about as long as everything else together."));
    return absent;
  }

  private String noLevels(String column) {
    String what = Words.column(column);
    Cells cells = fit.cells();
    if (levelsInUse(column) == 1) {
      int code = IntStream.of(cells.factor(column).codes()).max().orElse(0);
      String level = GrafterLabels.shown(cells.factor(column), options).get(code);
      return "These records hold only one %s (%s): there is nothing to compare it with. Records of a second one, in the same weeks and by the same hands, would give an answer."
          .formatted(what, level);
    }
    return "The model leaves %s out; name it in the model to have it compared.".formatted(what);
  }

  private int levelsInUse(String column) {
    return fit.cells()
        .findFactor(column)
        .map(
            factor ->
                (int) IntStream.of(factor.codes()).filter(code -> code >= 0).distinct().count())
        .orElse(0);
  }

  private List<Interval> spreads() {
    double[][] sds =
        IntStream.range(0, averaging.count())
            .mapToObj(averaging.draws()::sds)
            .toArray(double[][]::new);
    return IntStream.range(0, fit.varying().size())
        .mapToObj(k -> aroundFit(k, Samples.range(Samples.column(sds, k), options.level())))
        .toList();
  }

  /** A spread estimated as zero lies below every draw; the range then starts at the estimate. */
  private Interval aroundFit(int k, Interval range) {
    double estimate = fit.varying().get(k).standardDeviation();
    return new Interval(
        Math.min(range.low(), estimate), Math.max(range.high(), estimate), range.level());
  }
}
