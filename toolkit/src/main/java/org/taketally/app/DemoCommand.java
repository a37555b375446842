package org.taketally.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.files.FileSet;
import org.taketally.files.Guard;
import org.taketally.publish.SeasonSummary;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.invented.BundledDatasets;
import org.taketally.wording.TakeMeaningWords;
import org.taketally.wording.season.SeasonWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows what the program is for on invented records. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description =
        "Reads, checks and analyses invented records of the Halden Bay growers' circle, and writes"
            + " their season page.")
final class DemoCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "taketally-demo",
      description = "Folder for the records and the page (${DEFAULT-VALUE}).")
  private Path folder;

  @Mixin private ReplaceOption replace = new ReplaceOption();

  @Option(
      names = "--full",
      description = "Print every answer with its reasons, not the short ones.")
  private boolean full;

  private DemoWork work = new DemoWork();

  /**
   * Sets who does the long part.
   *
   * @param other instead of the usual
   */
  void workBy(DemoWork other) {
    work = other;
  }

  @Override
  public Integer call() throws IOException {
    Printing printing = new Printing(spec.commandLine().getOut());
    Path clean = folder.resolve("records");
    Path messy = folder.resolve("records-as-kept");
    Guard guard = replace.guard(List.of());
    BundledDatasets.copyTo(BundledDatasets.AVOCADO, clean, guard);
    BundledDatasets.copyTo(BundledDatasets.AVOCADO_MESSY, messy, guard);
    printing.paragraphs(
        "Invented records of the Halden Bay growers' circle (avocado): everything about them is"
            + " made up.");
    RecordsReader reader = RecordsReader.defaults();
    GraftRecords records = reader.readFolder(clean, "grafts-*.csv");
    printing.paragraphs(RecordsOptions.counts(records.check()));
    spec.commandLine().getOut().flush();
    HowLong howLong = new HowLong(spec.commandLine().getErr());
    howLong.answering(records.check());
    Analysis analysis =
        work.analysis(
            records, reader.assessments(List.of(clean.resolve("assessments.csv")), records));
    if (full) {
      printing.analysis(analysis, List.of(TakeMeaningWords.of(TakeMeaning.of(records))));
    }
    howLong.writing();
    FileSet files = FileSet.in(folder, "demo", guard);
    SeasonSummary summary = work.summary(records, analysis);
    Path page = SummaryCommand.write(summary, files).get(0);
    howLong.done();
    if (!full) {
      printing.bullets(summary.inShort());
      printing.paragraphs(
          String.join(" ", SeasonWords.in(DemoWork.OPTIONS.language()).sure().limits()));
      printing.paragraphs(
          "Each in full, with its range, how sure it is and from how many grafts: demo --full.");
      printing.paragraphs("The season page for members, and beside it a handout to print:");
      printing.line("  " + page.toAbsolutePath().normalize());
      return ExitStatus.FINE;
    }
    printing.heading("Where to look next");
    printing.paragraphs("The same circle's sheets as volunteers keep them, faults and all:");
    printing.line(
        "  java -jar toolkit/target/taketally.jar check --dictionary %s %s"
            .formatted(messy.resolve("dictionary.json"), messy.resolve("sheet-2025.csv")));
    printing.paragraphs("The season page for members:");
    printing.line("  " + page.toAbsolutePath().normalize());
    return ExitStatus.FINE;
  }
}
