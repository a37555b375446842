package org.taketally.app;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Question;
import org.taketally.files.FileSet;
import org.taketally.model.CannotFit;
import org.taketally.publish.SeasonSummary;
import org.taketally.publish.SummaryOptions;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.publish.privacy.PublishedBefore;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.wording.language.Language;
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

  /** Counts published from a folder so far, kept beside its page. */
  private static final String PUBLISHED = "season-published.csv";

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

  @Option(
      names = "--members",
      paramLabel = "N",
      description =
          "How many people made the grafts, where the records don't say: with two or more their"
              + " joint result can be shown.")
  private Integer members;

  @Option(
      names = "--language",
      paramLabel = "CODE",
      description = "Language of the page and its handout: en or es (${DEFAULT-VALUE}).")
  private String language = "en";

  @Override
  public Integer call() throws IOException {
    FileSet files = out.files("summary", input.files());
    files.requireFree("season.html", "handout.html", "season.md", "season.csv", PUBLISHED);
    GraftRecords records = input.read();
    input.report(records.check());
    HowLong howLong = new HowLong(spec.commandLine().getErr());
    howLong.answering(records.check());
    Optional<Assessments> counts = input.assessments(records);
    Optional<Analysis> analysis =
        answers(records).map(a -> counts.map(c -> a.withLateLoss(records, c)).orElse(a));
    SummaryOptions options =
        SummaryOptions.defaults().circle(club).sendTo(sendTo).language(Language.of(language));
    options = season == null ? options : options.season(season);
    options = strict ? options.rule(PrivacyRule.strict()) : options;
    options = members == null ? options : options.members(members);
    files.asRead(PUBLISHED);
    options = options.before(published(out.folder().resolve(PUBLISHED)));
    howLong.writing();
    Printing printing = new Printing(spec.commandLine().getOut());
    SeasonSummary summary = summary(records, analysis, options);
    List<Path> written = write(summary, files);
    howLong.done();
    summary.aboutNames().forEach(printing::paragraphs);
    for (Path file : written) {
      printing.paragraphs(
          (file.endsWith(PUBLISHED)
                  ? "Keep, so that the next page can be checked against this one (counts only): "
                  : "Written: ")
              + file);
    }
    return ExitStatus.FINE;
  }

  /** Empty where the records hold too little for the suggested model; says why. */
  private Optional<Analysis> answers(GraftRecords records) {
    try {
      return Optional.of(
          AnalyseCommand.analysis(
              records, choices, false, new ArrayList<>(), Set.of(Question.FIT)));
    } catch (CannotFit tooLittle) {
      if (choices.named()) {
        throw tooLittle;
      }
      spec.commandLine()
          .getErr()
          .println("nothing estimated, the page gives counts alone: " + tooLittle.getMessage());
      return Optional.empty();
    }
  }

  private static SeasonSummary summary(
      GraftRecords records, Optional<Analysis> analysis, SummaryOptions options) {
    return analysis
        .map(found -> SeasonSummary.of(records, found, options))
        .orElseGet(() -> SeasonSummary.of(records, List.of(), options));
  }

  static List<Path> write(SeasonSummary summary, FileSet files) throws IOException {
    FileSet pages =
        files
            .add("season.html", summary.html())
            .add("handout.html", summary.handout())
            .add("season.md", summary.markdown())
            .add("season.csv", summary.csv())
            .add(PUBLISHED, summary.published().csv());
    summary.pictures().forEach((name, png) -> pages.add(name + ".png", out -> out.write(png)));
    return pages.write();
  }

  /** What pages in the same folder have published already. */
  private static PublishedBefore published(Path file) throws IOException {
    if (!Files.exists(file)) {
      return PublishedBefore.nothing();
    }
    String found;
    try {
      return PublishedBefore.read(Files.readString(file));
    } catch (CharacterCodingException notText) {
      found = "a file that isn't text in UTF-8";
    } catch (IllegalArgumentException notOurs) {
      found = notOurs.getMessage();
    }
    throw new CannotCompute(
        "%s: found %s; move it away if no page was published from this folder"
            .formatted(file, found));
  }
}
