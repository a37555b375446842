package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.advice.Advice;
import org.taketally.publish.Block.Section;
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
    return new Handout(
        words.page(),
        say,
        words.page().title(facts.options().circle(), facts.latest()),
        words.page().lead(facts.total().grafts(), facts.allSeasons()),
        points(new OverviewSections(facts, words.overview())),
        steps.isEmpty()
            ? List.of(words.advice().none())
            : steps.stream().limit(Handout.MOST_STEPS).map(words.advice()::step).toList(),
        Handout.cultivars(say, answers.difficulty()));
  }

  private List<String> points(OverviewSections overview) {
    List<String> points = new ArrayList<>();
    points.add(overview.tookInAll());
    answers.rootstock().map(words.rootstocks()::point).ifPresent(points::add);
    answers
        .importance()
        .filter(m -> !m.factors().isEmpty())
        .map(words.factors()::headline)
        .ifPresent(points::add);
    answers.difficulty().map(words.cultivars()::hardOnes).ifPresent(points::add);
    return points;
  }
}
