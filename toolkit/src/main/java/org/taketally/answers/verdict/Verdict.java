package org.taketally.answers.verdict;

/** The seven things that can be said about whether a factor matters. */
public enum Verdict {
  /** The largest difference is very likely beyond the margin. */
  MATTERS,
  /** Levels differ; whether by more than the margin is open. */
  DIFFERS_UNSETTLED,
  /** Levels differ, but were shown to differ by less than the margin. */
  LESS_THAN_YOU_CARE_ABOUT,
  /** Shown to differ by less than the margin. */
  NO_PRACTICAL_DIFFERENCE,
  /** Within single cultivars a swap moves take beyond the margin, in different directions. */
  DEPENDS_ON_CULTIVAR,
  /** The records are too few or too noisy to say either. */
  CANT_TELL_YET,
  /** Levels were not compared within the same cultivars, grafters or seasons. */
  ENTANGLED
}
