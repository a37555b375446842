package org.taketally.app;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.adjusted.ProfileRanges;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.batches.LevelAgainstOthersCalculator.Asked;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.CountedRecords;
import org.taketally.files.FileSet;
import org.taketally.model.TakeModel;
import org.taketally.publish.AnalysisPage;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.wording.AnalysisJson;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.ModelWords;
import org.taketally.wording.ProfileWords;
import org.taketally.wording.TakeMeaningWords;
import org.taketally.wording.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Records in, answers out: words on the terminal, JSON for other programs. */
@Command(
    name = "analyse",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Answers from graft records: how hard is each cultivar, does the rootstock matter, what"
            + " moves take.")
final class AnalyseCommand implements Callable<Integer> {

  @Mixin private RecordsOptions input;
  @Mixin private ModelOptions choices;
  @Mixin private CostOptions costs;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;
  @Spec private CommandSpec spec;

  @Option(
      names = "--second-opinions",
      description =
          "Let other ways of predicting (ridge, random forest) predict seasons they have not seen;"
              + " takes as long again.")
  private boolean secondOpinions;

  @Option(
      names = "--profile",
      description =
          "Give profile-likelihood ranges of fixed effects and spreads as well (logits); takes some"
              + " ten further fits each.")
  private boolean profile;

  @Option(
      names = "--rows-as-given",
      description =
          "Keep every column, so that rows are only added up where they are alike in all of them.")
  private boolean rowsAsGiven;

  @Override
  public Integer call() throws IOException {
    costs.requireSense();
    if (out.asked()) {
      out.files("analyse", input.files()).requireFree("answers.html");
    }
    List<String> said = new ArrayList<>();
    boolean asked = choices.level(spec.commandLine()).isPresent();
    boolean rowsNeeded =
        asked || rowsAsGiven || out.asked() || input.countedAgain() || input.asksDatabase();
    Analysis analysis = choices.named() && !rowsNeeded ? streamed() : held(said);
    Optional<ProfileRanges> ranges =
        profile
            ? Optional.of(ProfileRanges.of(analysis.fit(), analysis.options()))
            : Optional.empty();
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.analysis(analysis, said);
      ranges.ifPresent(printing::profile);
    }
    if (json.asked()) {
      JsonObject result = AnalysisJson.of(analysis);
      ranges.ifPresent(
          found -> result.getAsJsonObject("fit").add("profile", ProfileWords.json(found)));
      json.write(result, out, input.files());
    }
    return ExitStatus.FINE;
  }

  private Analysis held(List<String> said) throws IOException {
    GraftRecords records = input.read();
    input.report(records.check());
    Optional<Assessments> counts = input.assessments(records);
    Analysis analysis = analysis(records, choices, rowsAsGiven, said, Set.of());
    said.add(0, TakeMeaningWords.of(TakeMeaning.of(records)));
    if (counts.isPresent()) {
      analysis = analysis.withLateLoss(records, counts.get());
    }
    Optional<Asked> asked = choices.level(spec.commandLine());
    if (asked.isPresent()) {
      analysis =
          analysis.withLevelAgainstOthers(records, asked.get().column(), asked.get().level());
    }
    analysis = more(analysis);
    if (out.asked()) {
      write(records, analysis);
    }
    return analysis;
  }

  private Analysis more(Analysis analysis) {
    return costs.added(secondOpinions ? analysis.withSecondOpinions() : analysis);
  }

  /** The page of all answers, and every table as CSV. */
  private void write(GraftRecords records, Analysis analysis) throws IOException {
    FileSet files = out.files("analyse", input.files());
    files.add("answers.html", AnalysisPage.of(records, analysis).html());
    for (Answer answer : analysis.answers()) {
      for (AnswerTable table : Wording.of(answer).tables()) {
        files.add(table.name() + ".csv", table.toCsv());
      }
    }
    spec.commandLine().getErr().println("page and tables written: " + files.write().get(0));
    spec.commandLine().getErr().flush();
  }

  /** Where the model is named, its columns are all that needs to be kept of the rows. */
  private Analysis streamed() {
    TakeModel model = choices.model();
    CountedRecords counted = input.count(SuggestedModel.needed(model));
    input.report(counted.check());
    requireGrafts(counted.check().grafts());
    return more(Analysis.of(counted.cells(), model, choices.answers()));
  }

  private static void requireGrafts(long grafts) {
    if (grafts == 0) {
      throw new CannotCompute(
          "these records hold no assessed graft, so there is nothing to analyse; give takes or"
              + " outcome for at least some of them");
    }
  }

  /** Fits the model asked for, or the suggested one, and answers; says what was chosen. */
  static Analysis analysis(
      GraftRecords records,
      ModelOptions choices,
      boolean rowsAsGiven,
      List<String> said,
      Set<Question> leftOut) {
    requireGrafts(records.grafts());
    TakeModel model;
    if (choices.named()) {
      model = choices.model();
    } else {
      SuggestedModel suggested = SuggestedModel.of(records);
      suggested.choices().forEach(choice -> said.add(ModelWords.of(choice)));
      model = choices.asked(suggested.model());
    }
    Cells cells =
        CellsOf.records(
            records, rowsAsGiven ? records.frame().columnNames() : SuggestedModel.needed(model));
    return Analysis.of(cells, model, choices.answers(), leftOut);
  }
}
