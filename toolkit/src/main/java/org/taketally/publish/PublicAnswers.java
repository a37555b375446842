package org.taketally.publish;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.stream.Stream;
import org.taketally.answers.Answer;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.LevelsLeftOut;
import org.taketally.answers.verdict.FactorVerdict.NoneOrAllTook;
import org.taketally.answers.verdict.FactorVerdict.Size;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.cells.Measure;
import org.taketally.model.TakeFit;
import org.taketally.plan.order.UsualTakes;
import org.taketally.publish.privacy.GraftsByMember;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/** The answers of an analysis, reduced to what may be published beside the counts of the page. */
final class PublicAnswers {

  private static final long FORECAST_SEED = 1;
  private static final Set<String> PLACES =
      Set.of(SeasonFacts.SITE, RecordColumn.BLOCK.columnName());
  private static final Set<String> PEOPLE =
      Set.of(
          SeasonFacts.GRAFTER,
          SeasonFacts.SITE,
          RecordColumn.BLOCK.columnName(),
          DerivedColumn.GRAFTING_DAY.columnName(),
          DerivedColumn.PAIRING.columnName());

  private final List<Answer> answers;
  private final SeasonFacts facts;
  private final Optional<UsualTakes> usual;
  private final SeasonAdvice advice;
  private final Optional<FactorImportance> importance;

  PublicAnswers(
      List<Answer> answers, Optional<TakeFit> fit, SeasonAdvice advice, SeasonFacts facts) {
    this.answers = List.copyOf(answers);
    this.facts = facts;
    this.usual = fit.flatMap(this::usual);
    this.advice = new PublicAdvice(facts, storage()).of(advice);
    this.importance = find(FactorImportance.class).flatMap(this::shown);
  }

  /** What is usual for cultivars that stand by themselves, where there is a fit to ask. */
  private Optional<UsualTakes> usual(TakeFit fit) {
    return difficulty()
        .map(d -> d.cultivars().stream().map(CultivarTake::cultivar).toList())
        .map(names -> UsualTakes.of(fit, names, FORECAST_SEED))
        .filter(found -> !found.cultivars().isEmpty());
  }

  Optional<UsualTakes> usual() {
    return usual;
  }

  private <T extends Answer> Optional<T> find(Class<T> kind) {
    return answers.stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }

  /** Only cultivars that stand by themselves in the page's table, with that table's counts. */
  Optional<Difficulty> difficulty() {
    Optional<Difficulty> whole = find(Difficulty.class);
    Optional<PublishedTable> table = facts.cultivarTable();
    if (whole.isEmpty() || table.isEmpty()) {
      return Optional.empty();
    }
    double coverage = whole.get().options().coverage();
    List<CultivarTake> shown =
        whole.get().cultivars().stream()
            .flatMap(c -> table.get().of(c.cultivar()).map(e -> recounted(c, e, coverage)).stream())
            .toList();
    return shown.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Difficulty(
                shown, List.of(), facts.total(), Optional.empty(), whole.get().options()));
  }

  private CultivarTake recounted(CultivarTake c, PublishedTable.Entry entry, double coverage) {
    TakeCount count = facts.count(entry);
    return new CultivarTake(
        c.cultivar(),
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), coverage),
        c.standardTake(),
        c.take(),
        c.drawnIn(),
        c.rank(),
        c.probabilityHardestQuarter(),
        c.band());
  }

  /** The verdict with only rootstocks that stand by themselves in the page's table. */
  Optional<FactorVerdict> rootstock() {
    return find(RootstockVerdict.class)
        .map(RootstockVerdict::type)
        .map(
            whole ->
                facts.rootstockTable().map(table -> reduced(whole, table)).orElse(bare(whole)));
  }

  /** Whether the rootstock that makes the difference may not be named. */
  boolean hidesWhatStandsOut() {
    Optional<PublishedTable> table = facts.rootstockTable();
    return find(RootstockVerdict.class).stream()
        .flatMap(answer -> answer.type().levels().stream())
        .filter(LevelTake::standsOut)
        .anyMatch(level -> table.flatMap(t -> t.of(level.level())).isEmpty());
  }

  private FactorVerdict reduced(FactorVerdict whole, PublishedTable table) {
    List<LevelTake> levels =
        whole.levels().stream()
            .flatMap(l -> table.of(l.level()).map(e -> recounted(l, e, whole)).stream())
            .toList();
    List<String> shown = table.shown();
    Optional<Size> size =
        whole
            .size()
            .map(
                s ->
                    new Size(
                        s.standardDeviation(),
                        s.largest(),
                        s.probabilityWithinMargin(),
                        s.pairs().stream()
                            .filter(p -> shown.contains(p.level()) && shown.contains(p.other()))
                            .toList()));
    return with(whole, levels, size);
  }

  private LevelTake recounted(LevelTake level, PublishedTable.Entry entry, FactorVerdict whole) {
    TakeCount count = facts.count(entry);
    return new LevelTake(
        level.level(),
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), whole.options().coverage()),
        level.take(),
        level.standsOut());
  }

  private FactorVerdict bare(FactorVerdict whole) {
    return with(whole, List.of(), Optional.empty());
  }

  private FactorVerdict with(FactorVerdict whole, List<LevelTake> levels, Optional<Size> size) {
    Confounding tie = whole.confounding();
    List<String> shown = levels.stream().map(LevelTake::level).toList();
    return new FactorVerdict(
        whole.factor(),
        whole.verdict(),
        levels,
        size,
        whole.tests(),
        whole.detectable(),
        new Confounding(
            tie.compared(), groups(tie, shown), tie.efficiency(), List.of(), tie.grafts()),
        whole.notes().stream().filter(note -> names(note).allMatch(shown::contains)).toList(),
        facts.total(),
        whole.options());
  }

  private static Stream<String> names(FactorVerdict.Note note) {
    if (note instanceof LevelsLeftOut out) {
      return out.levels().stream();
    }
    return note instanceof NoneOrAllTook bounded ? bounded.levels().stream() : Stream.empty();
  }

  /** Groups of the levels that may be shown; what they were grafted with is left out. */
  private static List<Confounding.Group> groups(Confounding tie, List<String> shown) {
    return tie.groups().stream()
        .map(g -> g.levels().stream().filter(shown::contains).toList())
        .filter(levels -> !levels.isEmpty())
        .map(levels -> new Confounding.Group(levels, List.of(), tie.grafts()))
        .toList();
  }

  /** Whether the verdict's reasons can be given with the levels that may be named. */
  boolean hasReasons(FactorVerdict reduced) {
    return reduced.verdict() == Verdict.ENTANGLED
        ? reduced.confounding().groups().size() > 1
        : reduced.size().isPresent()
            && reduced.detectable().isPresent()
            && !reduced.size().get().pairs().isEmpty();
  }

  /**
   * Every factor, but levels named only where they may be, and hands only where there are enough.
   */
  Optional<FactorImportance> importance() {
    return importance;
  }

  private Optional<FactorImportance> shown(FactorImportance whole) {
    if (facts.joint().isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        new FactorImportance(
            whole.factors().stream()
                .filter(this::enoughBehind)
                .map(this::unnamed)
                .map(this::asAdvised)
                .sorted(
                    Comparator.comparingDouble((Importance m) -> m.typical().value()).reversed())
                .toList(),
            whole.tally(),
            whole.options()));
  }

  /**
   * How far apart levels are tells on people where too few stand behind a level: hands need enough
   * of them, places enough at each, anything else at least two levels that may be shown.
   */
  private boolean enoughBehind(Importance importance) {
    List<String> known = facts.records().frame().columnNames();
    if (importance.factor().equals(SeasonFacts.GRAFTER)) {
      return facts.evidence().members(facts.evidence().all()) >= facts.options().rule().members();
    }
    if (importance.kind() == FactorImportance.Kind.NUMBER || !known.contains(importance.factor())) {
      return true;
    }
    GraftsByMember evidence = facts.evidence(List.of(importance.factor()));
    List<String> levels = evidence.levels(importance.factor());
    long shown =
        levels.stream()
            .filter(
                l ->
                    evidence.allows(evidence.level(importance.factor(), l), facts.options().rule()))
            .count();
    return PLACES.contains(importance.factor()) ? shown == levels.size() : shown >= 2;
  }

  /** Between two levels of which one is advised, the difference is the gain the page promises. */
  private Importance asAdvised(Importance importance) {
    return advice().steps().stream()
        .filter(PreferLevels.class::isInstance)
        .map(PreferLevels.class::cast)
        .filter(step -> step.factor().equals(importance.factor()) && importance.levels() == 2)
        .findFirst()
        .map(
            step ->
                new Importance(
                    importance.factor(),
                    importance.kind(),
                    importance.levels(),
                    step.gain(),
                    importance.best(),
                    importance.worst(),
                    step.gain(),
                    importance.compared()))
        .orElse(importance);
  }

  private Importance unnamed(Importance importance) {
    boolean named =
        mayName(importance, importance.best()) && mayName(importance, importance.worst());
    return new Importance(
        importance.factor(),
        importance.kind(),
        importance.levels(),
        importance.typical(),
        named ? importance.best() : "",
        named ? importance.worst() : "",
        importance.span(),
        importance.compared());
  }

  /**
   * Whether a level may be named beside a result: never one of people, places or their days, nor a
   * batch, which may be any of them.
   */
  private boolean mayName(Importance importance, String level) {
    String factor = importance.factor();
    if (importance.kind() == FactorImportance.Kind.NUMBER) {
      return true;
    }
    if (PEOPLE.contains(factor)
        || facts.records().batches().contains(factor)
        || !facts.records().frame().columnNames().contains(factor)) {
      return false;
    }
    if (factor.equals(RecordColumn.CULTIVAR.columnName())
        || factor.equals(RecordColumn.ROOTSTOCK.columnName())) {
      Optional<PublishedTable> table =
          factor.equals(RecordColumn.CULTIVAR.columnName())
              ? facts.cultivarTable()
              : facts.rootstockTable();
      return table.flatMap(t -> t.of(level)).isPresent();
    }
    GraftsByMember evidence = facts.evidence(List.of(factor));
    return evidence.levels(factor).contains(level)
        && evidence.allows(evidence.level(factor, level), facts.options().rule());
  }

  /**
   * The curve between its ends, each end far enough in to have enough grafts and members beyond.
   */
  Optional<TakeCurve> storage() {
    Optional<TakeCurve> whole = find(TakeCurve.class);
    if (whole.isEmpty()) {
      return Optional.empty();
    }
    String column = whole.get().column();
    Cells cells = facts.cells(List.of(column));
    Optional<Measure> measure = cells.findMeasure(column);
    if (measure.isEmpty()) {
      return Optional.empty();
    }
    GraftsByMember evidence = new GraftsByMember(cells, SeasonFacts.GRAFTER);
    double[] values = measure.get().values();
    List<TakeCurve.Point> kept =
        whole.get().points().stream()
            .filter(p -> enough(evidence, values, v -> v <= p.value()))
            .filter(p -> enough(evidence, values, v -> v >= p.value()))
            .toList();
    return kept.size() < 2 ? Optional.empty() : Optional.of(clipped(whole.get(), kept));
  }

  /** Late loss of all grafts together, if those it could strike can't be the work of too few. */
  Optional<LateLoss> lateLoss() {
    return find(LateLoss.class)
        .filter(loss -> facts.evidence().allowsAnyPartOf(kept(loss.all()), facts.options().rule()));
  }

  /** Of the grafts once alive, those not lost. */
  private static TakeCount kept(LateLoss.LevelLoss all) {
    return new TakeCount(all.onceAlive() - all.lost(), all.onceAlive());
  }

  private boolean enough(GraftsByMember evidence, double[] values, DoublePredicate condition) {
    BitSet group = evidence.where(i -> condition.test(values[i]));
    return evidence.allows(group, facts.options().rule());
  }

  private static TakeCurve clipped(TakeCurve whole, List<TakeCurve.Point> kept) {
    double end = kept.get(kept.size() - 1).value();
    return new TakeCurve(
        whole.column(),
        whole.unit(),
        kept,
        List.of(),
        whole.thinFrom() < end ? whole.thinFrom() : Double.NaN,
        Optional.empty(),
        whole.tally(),
        whole.options());
  }

  /** Advice that names no level behind which too few people stand. */
  SeasonAdvice advice() {
    return advice;
  }
}
