package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.answers.Estimate;
import org.taketally.answers.verdict.Contrast;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.PlannedContrasts.Result;
import org.taketally.answers.verdict.Verdict;
import org.taketally.answers.verdict.VerdictRules;
import org.taketally.terms.Interval;

/** Planned contrasts in words. */
final class PlannedContrastsWords implements AnswerWords {

  private static final int NAMED = 3;

  private final PlannedContrasts answer;
  private final String margin;

  PlannedContrastsWords(PlannedContrasts answer) {
    this.answer = answer;
    this.margin = "your margin of " + Words.points(answer.options().margin());
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question(), answer.factor());
  }

  @Override
  public String headline() {
    return answer.results().size() == 1
        ? sentence(answer.results().get(0))
        : answer.results().stream()
                .map(each -> each.contrast().name() + ": " + Names.of(each.verdict()))
                .collect(Collectors.joining("; "))
            + "; from %s.".formatted(Words.count(answer.tally().grafts(), "graft"));
  }

  @Override
  public List<String> more() {
    List<String> all = new ArrayList<>();
    if (answer.results().size() > 1) {
      answer.results().stream().map(this::sentence).forEach(all::add);
    }
    answer.results().stream()
        .map(Result::contrast)
        .filter(PlannedContrastsWords::isLong)
        .map(this::sides)
        .forEach(all::add);
    all.add(
        "Takes are averaged over the mix of cultivars and conditions in these records; each likely range is the one that decides the words beside it (%s within the margin, %s beyond, else %s), and holds for %s."
            .formatted(
                Words.percent(VerdictRules.ALONE),
                Words.percent(VerdictRules.BEYOND),
                Words.percent(VerdictRules.AT_ONCE),
                answer.results().size() == 1 ? "the contrast" : "all contrasts asked at once"));
    return all;
  }

  private String sentence(Result result) {
    String counts =
        "from %s against %s"
            .formatted(
                Words.count(result.some().grafts(), "graft"),
                Words.count(result.others().grafts()));
    String name = Words.sentence(result.contrast().name());
    String verdict = name + ": " + Names.of(result.verdict());
    if (result.verdict() == Verdict.ENTANGLED) {
      return "%s: these %s were not compared within the same cultivars, grafters and seasons; %s."
          .formatted(verdict, Words.levels(answer.factor()), counts);
    }
    return "%s. %s, %s; the chance that it lies beyond the margin is %s; %s."
        .formatted(
            verdict,
            apart(result.contrast(), result.difference().orElseThrow()),
            beside(result.verdict()),
            Words.chance(result.probabilityBeyondMargin()),
            counts);
  }

  private String beside(Verdict verdict) {
    return switch (verdict) {
      case NO_PRACTICAL_DIFFERENCE, LESS_THAN_YOU_CARE_ABOUT -> "within " + margin;
      case MATTERS -> "beyond " + margin;
      default -> "where " + margin + " is the question";
    };
  }

  /** Which side takes better, by how much. */
  private static String apart(Contrast contrast, Estimate difference) {
    boolean first = difference.value() >= 0;
    Interval range = difference.interval();
    List<String> better = first ? contrast.some() : contrast.others();
    return "%s %s %s better than %s (likely %s)"
        .formatted(
            Words.sentence(side(better)),
            better.size() == 1 ? "takes" : "take",
            Words.points(difference.value()),
            side(first ? contrast.others() : contrast.some()),
            Words.points(
                first ? range : new Interval(-range.high(), -range.low(), range.coverage())));
  }

  private static String side(List<String> levels) {
    return levels.size() == 1
        ? levels.get(0)
        : Words.first(levels, NAMED) + (levels.size() == 2 ? " together" : ", together,");
  }

  /** Who stands on which side, where the sentence doesn't say it in full. */
  private static boolean isLong(Contrast contrast) {
    return contrast.some().size() > NAMED
        || contrast.others().size() > NAMED
        || contrast.weights().values().stream().map(Math::abs).distinct().count() > 2;
  }

  private String sides(Contrast contrast) {
    return "%s: %s against %s."
        .formatted(
            Words.sentence(contrast.name()),
            weighed(contrast, contrast.some()),
            weighed(contrast, contrast.others()));
  }

  /** Weights are said where they aren't the same. */
  private static String weighed(Contrast contrast, List<String> levels) {
    boolean same = levels.stream().map(contrast.weights()::get).distinct().count() == 1;
    return Words.list(
        levels.stream()
            .map(
                level ->
                    same
                        ? level
                        : "%s (%s)"
                            .formatted(
                                level, Words.percent(Math.abs(contrast.weights().get(level)))))
            .toList());
  }

  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder table =
        AnswerTable.of(
            answer.factor().replace('_', '-') + "-contrasts",
            "Planned contrasts of " + Words.levels(answer.factor()),
            AnswerColumn.FACTOR,
            AnswerColumn.CONTRAST,
            AnswerColumn.GRAFTS,
            AnswerColumn.OTHER_GRAFTS,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.CHANCE_BEYOND_MARGIN,
            AnswerColumn.VERDICT);
    for (Result each : answer.results()) {
      table.row(
          answer.factor(),
          each.contrast().name(),
          each.some().grafts(),
          each.others().grafts(),
          each.difference().map(Estimate::value).orElse(null),
          each.difference().map(Estimate::low).orElse(null),
          each.difference().map(Estimate::high).orElse(null),
          each.difference().isPresent() ? each.probabilityBeyondMargin() : null,
          Names.of(each.verdict()));
    }
    return List.of(table.build());
  }
}
