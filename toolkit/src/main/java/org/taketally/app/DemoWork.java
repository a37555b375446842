package org.taketally.app;

import java.util.ArrayList;
import java.util.Set;
import org.taketally.analysis.Analysis;
import org.taketally.publish.SeasonSummary;
import org.taketally.publish.SummaryOptions;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;

/** The long part of a demo, apart from how it is told. */
class DemoWork {

  static final SummaryOptions OPTIONS =
      SummaryOptions.defaults().circle("Halden Bay growers' circle");

  /**
   * Answers by the suggested model.
   *
   * @param records the demo's
   * @param counts the same grafts counted again
   * @return all answers
   */
  Analysis analysis(GraftRecords records, Assessments counts) {
    return AnalyseCommand.analysis(records, new ModelOptions(), false, new ArrayList<>(), Set.of())
        .withLateLoss(records, counts);
  }

  /**
   * The page for members.
   *
   * @param records the demo's
   * @param analysis of them
   * @return the page
   */
  SeasonSummary summary(GraftRecords records, Analysis analysis) {
    return SeasonSummary.of(records, analysis, OPTIONS);
  }
}
