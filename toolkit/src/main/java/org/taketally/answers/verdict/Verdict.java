package org.taketally.answers.verdict;

/** The five things that can be said about whether a factor matters. */
public enum Verdict {
  /** Levels differ, and by more than the margin is plausible or shown. */
  MATTERS,
  /** Shown to differ by less than the margin. */
  NO_PRACTICAL_DIFFERENCE,
  /** Levels differ, but shown to differ by less than the margin. */
  LESS_THAN_YOU_CARE_ABOUT,
  /** The records are too few or too noisy to say either. */
  CANT_TELL_YET,
  /** Levels were not compared within the same cultivars, grafters or seasons. */
  ENTANGLED
}
