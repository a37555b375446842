package org.taketally.publish;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.taketally.answers.advice.Advice;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.figure.FigureSize;
import org.taketally.figure.Figures;
import org.taketally.publish.Block.Section;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.HandoutWords;
import org.taketally.wording.season.SeasonWords;

/** The season page for members, section by section. */
final class SeasonPage {

  private final SeasonFacts facts;
  private final PublicAnswers answers;
  private final SeasonWords words;

  SeasonPage(SeasonFacts facts, PublicAnswers answers, SeasonWords words) {
    this.facts = facts;
    this.answers = answers;
    this.words = words;
  }

  Page page() {
    OverviewSections overview = new OverviewSections(facts, words.overview());
    ResultSections results = new ResultSections(facts, answers, words);
    List<Section> sections = new ArrayList<>();
    sections.add(overview.inShort(points(overview)));
    sections.add(AdviceSection.of(answers, words.advice()));
    sections.add(overview.whoAndWhat());
    overview.whatChanged().ifPresent(sections::add);
    sections.add(results.cultivars());
    sections.add(results.rootstock());
    results.importance().ifPresent(sections::add);
    results.storage().ifPresent(sections::add);
    results.lateLoss().ifPresent(sections::add);
    sections.add(ClosingSections.cautions(words.closing()));
    sections.add(ClosingSections.howToRead(words.closing()));
    sections.add(ClosingSections.aboutTheNumbers(facts, words.closing()));
    return new Page(
        words.page(),
        words.page().title(facts.options().circle(), facts.latest()),
        words.page().lead(facts.total().grafts(), facts.allSeasons()),
        "",
        sections,
        words.page().footer());
  }

  /** The sheet to print. */
  Handout handout() {
    HandoutWords say = words.handout();
    List<Advice> steps = answers.advice().steps();
    List<String> found = points(new OverviewSections(facts, words.overview()), this::withReason);
    List<String> advised =
        steps.isEmpty()
            ? List.of(words.advice().none())
            : steps.stream().limit(Handout.MOST_STEPS).map(words.advice()::step).toList();
    List<String> said = Stream.concat(found.stream(), advised.stream()).toList();
    return new Handout(
        words.page(),
        say,
        words.page().title(facts.options().circle(), facts.latest()),
        words.page().lead(facts.total().grafts(), facts.allSeasons()),
        found,
        advised,
        Handout.cultivars(say, answers.difficulty(), said));
  }

  /** What stands in short, the most important first. */
  List<String> inShort() {
    List<String> points = points(new OverviewSections(facts, words.overview()));
    answers.storage().map(words.times()::storagePoint).ifPresent(points::add);
    answers.lateLoss().map(words.times()::lost).ifPresent(points::add);
    return points;
  }

  /** Every figure the page's answers have, by a name for its file. */
  Map<String, String> figures() {
    Language language = words.language();
    FigureSize size = FigureSize.WIDE;
    Map<String, String> figures = new LinkedHashMap<>();
    answers
        .difficulty()
        .ifPresent(a -> figures.put("figure-cultivars", Figures.difficulty(a, size, language)));
    answers
        .rootstock()
        .filter(a -> a.size().filter(s -> !s.pairs().isEmpty()).isPresent())
        .ifPresent(a -> figures.put("figure-rootstocks", Figures.differences(a, size, language)));
    answers
        .importance()
        .filter(a -> !a.factors().isEmpty())
        .ifPresent(a -> figures.put("figure-factors", Figures.importance(a, size, language)));
    answers
        .storage()
        .ifPresent(a -> figures.put("figure-storage", Figures.takeCurve(a, size, language)));
    return figures;
  }

  /** The sheet has no section of its own for what the verdict rests on. */
  private String withReason(FactorVerdict verdict) {
    return answers.hasReasons(verdict)
        ? words.rootstocks().pointWithReason(verdict)
        : words.rootstocks().point(verdict);
  }

  private List<String> points(OverviewSections overview) {
    return points(overview, words.rootstocks()::point);
  }

  private List<String> points(
      OverviewSections overview, Function<FactorVerdict, String> rootstock) {
    List<String> points = new ArrayList<>();
    points.add(overview.tookInAll());
    answers.rootstock().map(rootstock).ifPresent(points::add);
    answers
        .importance()
        .filter(m -> !m.factors().isEmpty())
        .map(words.factors()::headline)
        .ifPresent(points::add);
    answers.difficulty().map(words.cultivars()::hardOnes).ifPresent(points::add);
    return points;
  }
}
