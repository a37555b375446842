package org.taketally.publish;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Mover;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.figure.Figures;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** What was found: cultivars, rootstock, what moved take, storage. */
final class ResultSections {

  private static final int HEADLINE = 3;

  private final SeasonFacts facts;
  private final PublicAnswers answers;

  ResultSections(SeasonFacts facts, PublicAnswers answers) {
    this.facts = facts;
    this.answers = answers;
  }

  Section cultivars() {
    List<Block> blocks = new ArrayList<>();
    Optional<PublishedTable> table = facts.cultivarTable();
    Optional<Difficulty> difficulty = answers.difficulty();
    if (table.isEmpty()) {
      blocks.add(
          new Paragraph("Too few grafts or members stand behind each cultivar to list them."));
      return new Section("cultivars", "Which cultivars are hard to get to take?", blocks);
    }
    difficulty.ifPresent(
        answer -> {
          blocks.add(new Callout(hardOnes(answer)));
          blocks.add(FigureBlocks.figure(size -> Figures.difficulty(answer, size)));
        });
    blocks.add(new Table(cultivarGrid(table.get(), difficulty)));
    blocks.add(
        new Paragraph(
            "Is yours normal? Look whether your own share lies in the likely range of your"
                + " cultivar. With ten grafts or fewer it often lies outside by chance alone."));
    return new Section("cultivars", "Which cultivars are hard to get to take?", blocks);
  }

  static String hardOnes(Difficulty answer) {
    double limit = answer.options().bands().hardBelow();
    List<String> clearly = new ArrayList<>();
    List<String> probably = new ArrayList<>();
    for (CultivarTake c : answer.cultivars()) {
      if (c.band() == Band.HARD) {
        List<String> names = BandWords.clear(c, answer.options().bands()) ? clearly : probably;
        names.add(c.cultivar() + " (" + PlainWords.inTen(c.take().value()) + ")");
      }
    }
    String all =
        clearly.isEmpty()
            ? "No cultivar is clearly hard: none surely takes in fewer than %s of grafts."
                .formatted(Words.percent(limit))
            : "Clearly hard to get to take: " + Words.list(clearly) + ".";
    return probably.isEmpty() ? all : all + " Probably hard: " + Words.list(probably) + ".";
  }

  private Grid cultivarGrid(PublishedTable table, Optional<Difficulty> difficulty) {
    Optional<PublishedTable> latest = facts.latestTable();
    List<String> headings = new ArrayList<>(List.of("Cultivar", "Grafts"));
    headings.addAll(List.of("Took", "Take, all else equal", "Likely", "How hard"));
    latest.ifPresent(t -> headings.add("Took in " + facts.latest()));
    List<List<String>> rows = new ArrayList<>();
    for (Entry entry : inOrder(table, difficulty)) {
      rows.add(cultivarRow(entry, difficulty, latest));
    }
    String caption =
        "Results by cultivar" + (difficulty.isPresent() ? ", hardest first" : "") + note(table);
    return new Grid(caption, headings, rows);
  }

  private static String note(PublishedTable table) {
    int merged = table.merged().size();
    return merged == 0
        ? ""
        : "; %d with few grafts or few members are counted together".formatted(merged);
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

  private List<String> cultivarRow(
      Entry entry, Optional<Difficulty> difficulty, Optional<PublishedTable> latest) {
    String name = PlainWords.name(entry, "other cultivars");
    Optional<CultivarTake> take =
        entry.merged()
            ? Optional.empty()
            : difficulty.stream()
                .flatMap(d -> d.cultivars().stream())
                .filter(c -> c.cultivar().equals(name))
                .findFirst();
    List<String> row = new ArrayList<>(List.of(name, Words.count(facts.count(entry).grafts())));
    row.add(Words.count(facts.count(entry).takes()));
    row.addAll(PlainWords.takeColumns(take.map(CultivarTake::take)));
    row.add(
        take.map(c -> BandWords.of(c, difficulty.orElseThrow().options().bands()))
            .orElse(PublicAnswers.NOT_SHOWN));
    latest.ifPresent(table -> row.add(inLatest(entry, table)));
    return row;
  }

  private String inLatest(Entry entry, PublishedTable latest) {
    return Optional.of(entry)
        .filter(e -> !e.merged())
        .flatMap(e -> latest.of(e.levels().get(0)))
        .map(e -> facts.count(e))
        .map(c -> Words.count(c.takes()) + " of " + Words.count(c.grafts()))
        .orElse(PublicAnswers.NOT_SHOWN);
  }

  Section rootstock() {
    List<Block> blocks = new ArrayList<>();
    Optional<FactorVerdict> verdict = answers.rootstock();
    verdict.ifPresent(
        answer -> {
          blocks.add(new Callout(RootstockWords.verdict(answer)));
          reasons(answer).forEach(reason -> blocks.add(new Paragraph(reason)));
          if (answers.hidesWhatStandsOut()) {
            blocks.add(
                new Paragraph(
                    "Too few members grafted on the stock that stands out for it to be named"
                        + " here."));
          }
          if (answer.size().filter(size -> !size.pairs().isEmpty()).isPresent()) {
            blocks.add(FigureBlocks.figure(size -> Figures.differences(answer, size)));
          }
        });
    facts.rootstockTable().ifPresent(table -> blocks.add(new Table(rootstockGrid(table, verdict))));
    blocks.add(
        new Paragraph(
            "Take says nothing about growth, health, yield or how long the union lasts: stocks that"
                + " take alike can still differ in all of these."));
    return new Section("rootstock", "Does the rootstock matter?", blocks);
  }

  private List<String> reasons(FactorVerdict answer) {
    return answers.hasReasons(answer)
        ? Wording.of(answer).paragraphs()
        : List.of("The reasons can't be given without naming what too few members grafted.");
  }

  private Grid rootstockGrid(PublishedTable table, Optional<FactorVerdict> verdict) {
    List<List<String>> rows = new ArrayList<>();
    for (Entry entry : table.entries()) {
      String name = PlainWords.name(entry, "other rootstocks");
      Optional<Estimate> take =
          verdict.stream()
              .flatMap(v -> v.levels().stream())
              .filter(level -> !entry.merged() && level.level().equals(name))
              .flatMap(level -> level.take().stream())
              .findFirst();
      List<String> row = new ArrayList<>(List.of(name));
      row.add(Words.count(facts.count(entry).grafts()));
      row.add(Words.count(facts.count(entry).takes()));
      row.addAll(PlainWords.takeColumns(take));
      rows.add(row);
    }
    return new Grid(
        "Results by rootstock" + note(table),
        List.of("Rootstock", "Grafts", "Took", "Take, all else equal", "Likely"),
        rows);
  }

  Optional<Section> movers() {
    return answers
        .movers()
        .filter(answer -> !answer.movers().isEmpty())
        .map(
            answer ->
                new Section(
                    "what-moves-take",
                    "What goes with take?",
                    List.of(
                        new Callout(moversHeadline(answer)),
                        FigureBlocks.figure(size -> Figures.importance(answer, size)),
                        new Table(moversGrid(answer)),
                        new Paragraph(
                            "This shows what went together with take in these records. It is not"
                                + " always what caused it."))));
  }

  /** The first three and whatever ties with the last of them; ties are said as ties. */
  static String moversHeadline(FactorImportance answer) {
    Map<String, List<String>> bySize = new LinkedHashMap<>();
    for (Mover mover : answer.movers()) {
      String size = Words.points(mover.typical().value());
      long before = bySize.values().stream().mapToLong(List::size).sum();
      if (bySize.containsKey(size) || before < HEADLINE) {
        bySize.computeIfAbsent(size, key -> new ArrayList<>()).add(Words.column(mover.factor()));
      }
    }
    List<String> parts = new ArrayList<>();
    bySize.forEach(
        (size, names) ->
            parts.add(
                "%s (%s%s)".formatted(Words.list(names), size, names.size() == 1 ? "" : " each")));
    return "What goes with take most: " + String.join(", then ", parts) + ".";
  }

  private static String shown(String level) {
    return level.isEmpty() ? PublicAnswers.NOT_SHOWN : level;
  }

  private static Grid moversGrid(FactorImportance answer) {
    List<List<String>> rows = new ArrayList<>();
    for (Mover m : answer.movers()) {
      rows.add(
          List.of(
              PlainWords.column(m.factor()),
              Words.points(m.typical().value()),
              Words.points(m.typical().interval()),
              shown(m.best()),
              shown(m.worst())));
    }
    return new Grid(
        "How far apart two grafts that differ in one thing typically are",
        List.of("What", "Typical difference", "Likely range", "Best", "Worst"),
        rows);
  }

  Optional<Section> storage() {
    return answers
        .storage()
        .map(
            curve ->
                new Section(
                    "storage",
                    "How long does budwood keep?",
                    List.of(
                        new Callout(StorageWords.headline(curve)),
                        FigureBlocks.figure(size -> Figures.takeCurve(curve, size)),
                        new Table(storageGrid(curve)),
                        new Paragraph(
                            "The curve ends where fewer than ten grafts or too few members are"
                                + " left."))));
  }

  /** Shares only, of all grafts together: counts of a part would tell on those not followed. */
  Optional<Section> lateLoss() {
    return answers
        .lateLoss()
        .map(
            loss ->
                new Section(
                    "late-loss",
                    "How many takes are lost later?",
                    List.of(
                        new Callout(
                            "%s of the grafts that were once alive were lost within %d days after the first count."
                                .formatted(
                                    Words.sentence(PlainWords.take(loss.all().lateLoss())),
                                    loss.rounds().get(loss.rounds().size() - 1).middle())),
                        new Paragraph(
                            "Counted early, %s had taken; counted last, %s. Early counts make grafting look better than it is, and slow starters worse."
                                .formatted(
                                    Words.percent(loss.all().early().rate()),
                                    Words.percent(loss.all().last().rate()))))));
  }

  private static Grid storageGrid(TakeCurve curve) {
    List<List<String>> rows = new ArrayList<>();
    List<Point> points = curve.points();
    int step = Math.max(1, (points.size() - 1) / 6);
    for (int i = 0; i < points.size(); i += step) {
      List<String> row = new ArrayList<>();
      row.add(Words.amount(points.get(i).value(), curve.unit()));
      row.addAll(PlainWords.takeColumns(Optional.of(points.get(i).take())));
      rows.add(row);
    }
    return new Grid(
        "Take against " + Words.column(curve.column()),
        List.of(PlainWords.column(curve.column()), "Take, all else equal", "Likely"),
        rows);
  }
}
