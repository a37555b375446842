package org.taketally.wording.figures;

import org.taketally.answers.Estimate;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** The figure of takes by block within site in words. */
public final class BlockTakesFigureWords {

  /** The title. */
  public static final String TITLE = "Takes by block within site";

  /** The key's word for a mark. */
  public static final String COUNTED = "counted take";

  /** What the axis shows. */
  public static final String AXIS = "grafts that took, in 100";

  private final BlockTakes answer;

  /**
   * The words of a figure.
   *
   * @param answer the figure shows
   */
  public BlockTakesFigureWords(BlockTakes answer) {
    this.answer = answer;
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return "As counted, nothing adjusted; " + Words.count(answer.tally().grafts(), "graft");
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
   * A block in full.
   *
   * @param label its site and name
   * @param take as counted
   * @return a few words
   */
  public String detail(String label, Estimate take) {
    return label + ": " + Words.take(take);
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " blocks between are in the table";
  }
}
