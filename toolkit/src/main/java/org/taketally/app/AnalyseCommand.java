package org.taketally.app;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.analysis.CountsAlone;
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
import org.taketally.model.CannotFit;
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
import org.taketally.wording.Words;
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

  private static final String[] NEED_A_FIT = {
    "--out", "--assessments", "--is", "--second-opinions", "--profile", "--cost-per-graft"
  };

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
    Optional<Analysis> found = choices.named() && !rowsNeeded ? streamed() : held(said);
    return found.isPresent() ? answer(found.get(), said) : ExitStatus.FINE;
  }

  private int answer(Analysis analysis, List<String> said) throws IOException {
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

  private Optional<Analysis> held(List<String> said) throws IOException {
    GraftRecords records = input.read();
    input.report(records.check());
    Optional<Assessments> counts = input.assessments(records);
    Asking asking = Asking.of(records, choices, rowsAsGiven, said);
    said.add(0, TakeMeaningWords.of(TakeMeaning.of(records)));
    Optional<Analysis> answered = answered(asking);
    if (answered.isEmpty()) {
      return answered;
    }
    Analysis analysis = answered.get();
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
    return Optional.of(analysis);
  }

  /** Empty where none or all took, so that counts alone answered. */
  private Optional<Analysis> answered(Asking asking) throws IOException {
    try {
      return Optional.of(Analysis.of(asking.cells(), asking.model(), choices.answers()));
    } catch (CannotFit problem) {
      byCounts(
          CountsAlone.of(asking.cells(), asking.model(), choices.answers(), problem)
              .orElseThrow(() -> problem));
      return Optional.empty();
    }
  }

  private void byCounts(CountsAlone counts) throws IOException {
    if (!json.alone()) {
      new Printing(spec.commandLine().getOut()).counts(counts);
    }
    json.write(AnalysisJson.of(counts), out, input.files());
    List<String> fruitless = OptionsTogether.typed(spec.commandLine(), NEED_A_FIT);
    if (!fruitless.isEmpty()) {
      spec.commandLine()
          .getErr()
          .println("nothing came of %s: %s".formatted(Words.list(fruitless), counts.why()));
      spec.commandLine().getErr().flush();
    }
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
  private Optional<Analysis> streamed() throws IOException {
    TakeModel model = choices.model();
    CountedRecords counted = input.count(SuggestedModel.needed(model));
    input.report(counted.check());
    requireGrafts(counted.check().grafts());
    return answered(new Asking(counted.cells(), model)).map(this::more);
  }

  /** What is asked: cells, and what take may depend on. */
  private record Asking(Cells cells, TakeModel model) {

    /** The model asked for, or the suggested one; what was chosen is added to what is said. */
    static Asking of(
        GraftRecords records, ModelOptions choices, boolean rowsAsGiven, List<String> said) {
      requireGrafts(records.grafts());
      TakeModel model;
      if (choices.named()) {
        model = choices.model();
      } else {
        SuggestedModel suggested = SuggestedModel.of(records);
        suggested.choices().forEach(choice -> said.add(ModelWords.of(choice)));
        model = choices.asked(suggested.model());
      }
      return new Asking(
          CellsOf.records(
              records, rowsAsGiven ? records.frame().columnNames() : SuggestedModel.needed(model)),
          model);
    }
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
    Asking asking = Asking.of(records, choices, rowsAsGiven, said);
    return Analysis.of(asking.cells(), asking.model(), choices.answers(), leftOut);
  }
}
