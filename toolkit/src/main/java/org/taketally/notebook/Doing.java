package org.taketally.notebook;

import java.util.LinkedHashMap;
import java.util.Map;
import org.taketally.analysis.AnswerRegister;
import org.taketally.wording.QuestionWords;

/** What a running cell is at, told by where its code is: a question, or a step on the way to it. */
final class Doing {

  private static final String OURS = "org.taketally.";

  /** Rooms and classes, those that say more first. */
  private static final Map<String, String> STEPS = new LinkedHashMap<>();

  static {
    for (AnswerRegister line : AnswerRegister.values()) {
      String calculator = line.kind().getName() + "Calculator";
      STEPS.put(calculator, QuestionWords.of(line.question(), "rootstock"));
    }
    STEPS.put("org.taketally.answers.adjusted.MarginalTakes", "averaging the fit over the records");
    STEPS.put("org.taketally.answers.adjusted.FallbackFit", "fitting the model");
    STEPS.put("org.taketally.model.compare.", "comparing models");
    STEPS.put("org.taketally.model.", "fitting the model");
    STEPS.put("org.taketally.records.", "reading the records");
    STEPS.put("org.taketally.plan.", "trying out plans");
    STEPS.put("org.taketally.watch.", "watching the season");
    STEPS.put("org.taketally.publish.", "making the page");
  }

  private Doing() {}

  /**
   * What a thread is at.
   *
   * @param stack of the thread, innermost first
   * @return e.g. {@code fitting the model}; empty if it is at nothing of the toolkit's
   */
  static String at(StackTraceElement[] stack) {
    for (int i = stack.length - 1; i >= 0; i--) {
      String name = stack[i].getClassName();
      if (name.startsWith(OURS)) {
        for (Map.Entry<String, String> step : STEPS.entrySet()) {
          if (name.startsWith(step.getKey())) {
            return step.getValue();
          }
        }
      }
    }
    return "";
  }
}
