package org.taketally.study;

import java.util.function.Supplier;

/**
 * One kind of trial.
 *
 * @param name short, without commas; the first word is the group of kinds
 * @param says what is tried, for readers
 * @param design makes a fresh design
 * @param seed of the first trial, the next ones following
 */
record StudyKind(String name, String says, Supplier<TrialDesign> design, long seed) {

  double gap() {
    return design.get().gap();
  }
}
