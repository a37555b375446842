package org.taketally.answers.advice;

import java.util.List;

/**
 * What to do differently next season.
 *
 * @param steps largest gain first
 * @param none choices looked at on which nothing is advised
 */
public record SeasonAdvice(List<Advice> steps, List<NoAdvice> none) {

  public SeasonAdvice {
    steps = List.copyOf(steps);
    none = List.copyOf(none);
  }

  /**
   * Nothing looked at.
   *
   * @return no advice
   */
  public static SeasonAdvice nothing() {
    return new SeasonAdvice(List.of(), List.of());
  }
}
