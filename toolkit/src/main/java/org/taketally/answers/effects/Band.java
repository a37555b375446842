package org.taketally.answers.effects;

import org.taketally.answers.AnswerOptions;

/** How hard a cultivar is to get to take, by the thresholds of {@link AnswerOptions.Bands}. */
public enum Band {
  /** Surely takes well. */
  EASY,
  /** Surely between the two. */
  MIDDLING,
  /** Surely hard. */
  HARD,
  /** Too near a limit to be sure. */
  CANT_TELL
}
