package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.PlannedContrasts.Result;
import org.taketally.wording.Names;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** The figure of planned contrasts in words. */
public final class ContrastsFigureWords {

  /** The key's word for a bar. */
  public static final String LIKELY = "likely range that decides, all contrasts at once";

  /** What the axis shows. */
  public static final String AXIS = "points by which those named first take better";

  /** Said where nothing can be drawn. */
  public static final String NOTHING = "These records can't compare what was asked.";

  private final PlannedContrasts answer;
  private final String margin;

  /**
   * The words of a figure.
   *
   * @param answer the figure shows
   */
  public ContrastsFigureWords(PlannedContrasts answer) {
    this.answer = answer;
    this.margin = Words.points(answer.options().margin());
  }

  /**
   * The title.
   *
   * @return a few words
   */
  public String title() {
    return "Planned contrasts of " + Words.levels(answer.factor());
  }

  /**
   * What is shown, and from how much.
   *
   * @return a few words
   */
  public String subtitle() {
    return "Difference in take, in points; %s; %s"
        .formatted(
            Words.count(answer.results().size(), "contrast"),
            Words.count(answer.tally().grafts(), "graft"));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    return subtitle() + ". " + Wording.of(answer).headline();
  }

  /**
   * The shaded stretch.
   *
   * @return a few words
   */
  public String zone() {
    return "within " + margin + ": about the same";
  }

  /**
   * What the shaded stretch means.
   *
   * @return a sentence
   */
  public String note() {
    return "The shaded stretch is the margin: differences of less than %s, too small to change what you do."
        .formatted(margin);
  }

  /**
   * Contrasts that aren't drawn.
   *
   * @return a sentence; empty text if all are drawn
   */
  public String notDrawn() {
    List<String> names =
        answer.results().stream()
            .filter(each -> each.difference().isEmpty())
            .map(each -> each.contrast().name())
            .toList();
    return names.isEmpty() ? "" : "These records can't compare: %s.".formatted(Words.list(names));
  }

  /**
   * Lines left out of a long list.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " contrasts between are in the table";
  }

  /**
   * A line for those who point at it.
   *
   * @param result with a difference
   * @return a few words
   */
  public String detail(Result result) {
    Estimate difference = result.difference().orElseThrow();
    return "%s, %s (likely %s), %s"
        .formatted(
            result.contrast().name(),
            Words.points(difference.value()),
            Words.points(difference.interval()),
            Names.of(result.verdict()));
  }
}
