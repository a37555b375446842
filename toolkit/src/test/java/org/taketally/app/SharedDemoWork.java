package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.taketally.analysis.Analysis;
import org.taketally.publish.SeasonSummary;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import picocli.CommandLine;

/** Works out the answers of the demo once, for all ways of telling them. */
final class SharedDemoWork extends DemoWork {

  private GraftRecords records;
  private Analysis analysis;
  private SeasonSummary summary;

  /** All commands, the demo among them with what was worked out before. */
  CommandLine commands() {
    CommandLine commands = Taketally.commandLine();
    DemoCommand demo = commands.getSubcommands().get("demo").getCommand();
    demo.workBy(this);
    return commands;
  }

  /** What was worked out. */
  synchronized Analysis found() {
    return analysis;
  }

  @Override
  synchronized Analysis analysis(GraftRecords read, Assessments counts) {
    if (analysis == null) {
      records = read;
      analysis = super.analysis(read, counts);
    }
    assertThat(read.frame().print(Integer.MAX_VALUE))
        .isEqualTo(records.frame().print(Integer.MAX_VALUE));
    return analysis;
  }

  @Override
  synchronized SeasonSummary summary(GraftRecords read, Analysis found) {
    assertThat(found).isSameAs(analysis);
    if (summary == null) {
      summary = super.summary(read, found);
    }
    return summary;
  }
}
