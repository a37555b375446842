package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.figure.Figures;
import org.taketally.plan.order.UsualTakes;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.wording.season.CultivarWords;
import org.taketally.wording.season.RootstockWords;
import org.taketally.wording.season.SeasonWords;

/** What was found: cultivars, rootstock, what goes with take, storage. */
final class ResultSections {

  private static final int STORAGE_ROWS = 6;

  private final SeasonFacts facts;
  private final PublicAnswers answers;
  private final SeasonWords words;

  ResultSections(SeasonFacts facts, PublicAnswers answers, SeasonWords words) {
    this.facts = facts;
    this.answers = answers;
    this.words = words;
  }

  Section cultivars() {
    CultivarWords say = words.cultivars();
    List<Block> blocks = new ArrayList<>();
    Optional<PublishedTable> table = facts.cultivarTable();
    Optional<Difficulty> difficulty = answers.difficulty();
    if (table.isEmpty()) {
      blocks.add(new Paragraph(say.tooFew()));
      return new Section("cultivars", say.heading(), blocks);
    }
    difficulty.ifPresent(
        answer -> {
          blocks.add(new Callout(say.hardOnes(answer)));
        });
    blocks.add(new Table(cultivarGrid(table.get(), difficulty)));
    answers.usual().map(say::usualNote).map(Paragraph::new).ifPresent(blocks::add);
    blocks.add(new Paragraph(say.yours()));
    return new Section("cultivars", say.heading(), blocks);
  }

  private Grid cultivarGrid(PublishedTable table, Optional<Difficulty> difficulty) {
    CultivarWords say = words.cultivars();
    Optional<PublishedTable> latest = facts.latestTable();
    List<String> headings = new ArrayList<>(say.headings(latest.map(season -> facts.latest())));
    answers.usual().map(say::usualHeadings).ifPresent(headings::addAll);
    List<List<String>> rows = new ArrayList<>();
    List<Optional<Estimate>> takes = new ArrayList<>();
    for (Entry entry : inOrder(table, difficulty)) {
      CultivarWords.Entry values = values(entry, difficulty);
      List<String> row = new ArrayList<>(say.row(values, bands(difficulty)));
      latest.ifPresent(season -> row.add(say.tookIn(inLatest(entry, season))));
      answers.usual().ifPresent(usual -> row.addAll(say.usualRow(usual(entry, usual))));
      rows.add(row);
      takes.add(values.take().map(CultivarTake::take));
    }
    String caption = say.caption(difficulty.isPresent(), table.merged().size());
    Grid grid = new Grid(caption, headings, rows);
    return difficulty.isPresent() ? grid.with(say.barHeading(), takes) : grid;
  }

  private static Optional<UsualTakes.Usual> usual(Entry entry, UsualTakes usual) {
    return entry.merged()
        ? Optional.empty()
        : Optional.ofNullable(usual.cultivars().get(entry.levels().get(0)));
  }

  private static Bands bands(Optional<Difficulty> difficulty) {
    return difficulty.map(d -> d.options().bands()).orElse(Bands.DEFAULT);
  }

  private CultivarWords.Entry values(Entry entry, Optional<Difficulty> difficulty) {
    Optional<CultivarTake> take =
        difficulty.stream()
            .flatMap(d -> d.cultivars().stream())
            .filter(c -> !entry.merged() && c.cultivar().equals(entry.levels().get(0)))
            .findFirst();
    return new CultivarWords.Entry(entry.levels(), entry.merged(), facts.count(entry), take);
  }

  private static List<Entry> inOrder(PublishedTable table, Optional<Difficulty> difficulty) {
    List<String> order =
        difficulty
            .map(d -> d.cultivars().stream().map(CultivarTake::cultivar).toList())
            .orElse(List.of());
    List<Entry> entries = new ArrayList<>();
    order.forEach(name -> table.of(name).ifPresent(entries::add));
    table.entries().stream().filter(entry -> !entries.contains(entry)).forEach(entries::add);
    return entries;
  }

  private Optional<TakeCount> inLatest(Entry entry, PublishedTable latest) {
    return Optional.of(entry)
        .filter(e -> !e.merged())
        .flatMap(e -> latest.of(e.levels().get(0)))
        .map(facts::count);
  }

  Section rootstock() {
    RootstockWords say = words.rootstocks();
    List<Block> blocks = new ArrayList<>();
    List<Block> pairs = new ArrayList<>();
    Optional<FactorVerdict> verdict = answers.rootstock();
    verdict.ifPresent(
        answer -> {
          blocks.add(new Callout(say.verdict(answer)));
          reasons(answer).forEach(reason -> blocks.add(new Paragraph(reason)));
          if (answers.hidesWhatStandsOut()) {
            blocks.add(new Paragraph(say.hidden()));
          }
          if (answer.size().filter(size -> !size.pairs().isEmpty()).isPresent()) {
            pairs.add(new Fold(pairs(answer)));
          }
        });
    if (verdict.isEmpty()) {
      blocks.add(new Callout(say.unsaid()));
    }
    facts
        .rootstockTable()
        .filter(table -> verdict.isPresent() || table.entries().size() > 1)
        .ifPresent(table -> blocks.add(new Table(rootstockGrid(table, verdict))));
    blocks.addAll(pairs);
    blocks.add(new Paragraph(say.limits()));
    return new Section("rootstock", say.heading(), blocks);
  }

  private Section pairs(FactorVerdict answer) {
    return new Section(
        "rootstock-pairs",
        words.rootstocks().pairs(),
        List.of(FigureBlocks.figure(size -> Figures.differences(answer, size, words.language()))));
  }

  private List<String> reasons(FactorVerdict answer) {
    return answers.hasReasons(answer)
        ? words.rootstocks().reasons(answer)
        : List.of(words.rootstocks().noReasons());
  }

  private Grid rootstockGrid(PublishedTable table, Optional<FactorVerdict> verdict) {
    RootstockWords say = words.rootstocks();
    List<List<String>> rows = new ArrayList<>();
    List<Optional<Estimate>> takes = new ArrayList<>();
    for (Entry entry : table.entries()) {
      Optional<Estimate> take =
          verdict.stream()
              .flatMap(v -> v.levels().stream())
              .filter(level -> !entry.merged() && level.level().equals(entry.levels().get(0)))
              .flatMap(level -> level.take().stream())
              .findFirst();
      rows.add(say.row(entry.levels(), entry.merged(), facts.count(entry), take));
      takes.add(take);
    }
    Grid grid = new Grid(say.caption(table.merged().size()), say.headings(), rows);
    return verdict.isPresent() ? grid.with(words.cultivars().barHeading(), takes) : grid;
  }

  Optional<Section> importance() {
    return answers.importance().filter(answer -> !answer.factors().isEmpty()).map(this::importance);
  }

  private Section importance(FactorImportance answer) {
    Grid grid =
        new Grid(
            words.factors().caption(),
            words.factors().headings(),
            answer.factors().stream().map(words.factors()::row).toList());
    return new Section(
        "what-moves-take",
        words.factors().heading(),
        List.of(
            new Callout(words.factors().headline(answer)),
            FigureBlocks.figure(size -> Figures.importance(answer, size, words.language())),
            new Table(grid),
            new Paragraph(words.factors().limits())));
  }

  Optional<Section> storage() {
    return answers
        .storage()
        .map(
            curve ->
                new Section(
                    "storage",
                    words.times().storage(),
                    List.of(
                        new Callout(words.times().ends(curve)),
                        FigureBlocks.figure(
                            size -> Figures.takeCurve(curve, size, words.language())),
                        new Table(storageGrid(curve)),
                        new Paragraph(words.times().storageLimits()))));
  }

  private Grid storageGrid(TakeCurve curve) {
    List<List<String>> rows = new ArrayList<>();
    List<Point> points = curve.points();
    int step = Math.max(1, (points.size() - 1) / STORAGE_ROWS);
    for (int i = 0; i < points.size(); i += step) {
      rows.add(words.times().storageRow(points.get(i), curve.unit()));
    }
    return new Grid(
        words.times().storageCaption(curve.column()),
        words.times().storageHeadings(curve.column()),
        rows);
  }

  /** Shares only, of all grafts together: counts of a part would tell on those not followed. */
  Optional<Section> lateLoss() {
    return answers
        .lateLoss()
        .map(
            loss ->
                new Section(
                    "late-loss",
                    words.times().lateLoss(),
                    List.of(
                        new Callout(words.times().lost(loss)),
                        new Paragraph(words.times().countedEarly(loss)))));
  }
}
