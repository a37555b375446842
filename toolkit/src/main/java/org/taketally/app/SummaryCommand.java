package org.taketally.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.files.FileSet;
import org.taketally.publish.SeasonSummary;
import org.taketally.publish.SummaryOptions;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the season page for members. */
@Command(
    name = "summary",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Writes the season page for members: one file to put online or to print.")
final class SummaryCommand implements Callable<Integer> {

  @Mixin private RecordsOptions input;
  @Mixin private ModelOptions choices;
  @Mixin private OutFolder out;
  @Spec private CommandSpec spec;

  @Option(names = "--club", paramLabel = "NAME", description = "Who publishes the page.")
  private String club = "";

  @Option(
      names = "--season",
      paramLabel = "SEASON",
      description = "The season the page is about; the latest if not said.")
  private String season;

  @Option(
      names = "--send-to",
      paramLabel = "WORDS",
      description = "How members send in their results, one sentence.")
  private String sendTo = "";

  @Option(
      names = "--strict",
      description = "Show a line only with five members or more behind it instead of three.")
  private boolean strict;

  @Override
  public Integer call() throws IOException {
    FileSet files = out.files("summary", input.files());
    files.requireFree("season.html", "season.md", "season.csv");
    GraftRecords records = input.read();
    input.report(records.check());
    Analysis analysis = AnalyseCommand.analysis(records, choices, false, new ArrayList<>());
    Optional<Assessments> counts = input.assessments(records);
    if (counts.isPresent()) {
      analysis = analysis.withLateLoss(records, counts.get());
    }
    SummaryOptions options = SummaryOptions.defaults().circle(club).sendTo(sendTo);
    options = season == null ? options : options.season(season);
    options = strict ? options.rule(PrivacyRule.strict()) : options;
    Printing printing = new Printing(spec.commandLine().getOut());
    for (Path file : write(SeasonSummary.of(records, analysis, options), files)) {
      printing.paragraphs("Written: " + file);
    }
    return ExitStatus.FINE;
  }

  static List<Path> write(SeasonSummary summary, FileSet files) throws IOException {
    return files
        .add("season.html", summary.html())
        .add("season.md", summary.markdown())
        .add("season.csv", summary.csv())
        .write();
  }
}
