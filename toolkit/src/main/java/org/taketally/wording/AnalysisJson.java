package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import org.taketally.analysis.Analysis;
import org.taketally.analysis.AnswerRegister;
import org.taketally.analysis.CountsAlone;
import org.taketally.answers.Answer;
import org.taketally.answers.Unanswered;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.terms.Provenance;

/**
 * An analysis for other programs. Keys are stable and described in docs/commands.md; estimates of
 * the fit are logits, everything else is a share of 1.
 */
public final class AnalysisJson {

  /** Raised when a key changes its meaning or goes; new keys leave it as it is. */
  public static final int VERSION = 2;

  private final Analysis analysis;
  private final TakeFit fit;

  private AnalysisJson(Analysis analysis) {
    this.analysis = analysis;
    this.fit = analysis.fit();
  }

  /**
   * The whole analysis.
   *
   * @param analysis the answers
   * @return the keys of docs/commands.md
   */
  public static JsonObject of(Analysis analysis) {
    return new AnalysisJson(analysis).all();
  }

  /**
   * What counts alone answered.
   *
   * @param counts the verdict by counts
   * @return keys of the whole analysis, those that need no fit
   */
  public static JsonObject of(CountsAlone counts) {
    JsonObject all = new JsonObject();
    all.addProperty("version", VERSION);
    all.add("inShort", inShort(List.of(counts.verdict())));
    all.add(AnswerRegister.ROOTSTOCK.key(), VerdictJson.of(counts.verdict()));
    all.addProperty("why", counts.why());
    return all;
  }

  private JsonObject all() {
    JsonObject all = new JsonObject();
    all.addProperty("version", VERSION);
    all.add("records", records());
    all.add("inShort", inShort(analysis.answers()));
    for (AnswerRegister line : AnswerRegister.values()) {
      all.add(line.key(), form(line));
    }
    all.add("absent", absent());
    all.add("changes", JsonValues.words(analysis.changes().stream().map(ModelWords::of).toList()));
    all.add("fit", fit());
    all.add("levels", levels());
    return all;
  }

  private static JsonArray inShort(List<? extends Answer> answers) {
    JsonArray all = new JsonArray();
    for (Answer answer : answers) {
      AnswerWords words = Wording.of(answer);
      JsonObject one = new JsonObject();
      one.addProperty("question", words.question());
      one.addProperty("answer", words.headline());
      all.add(one);
    }
    return all;
  }

  /** Those who have a form of their own, and all others in full. */
  private JsonElement form(AnswerRegister line) {
    Optional<? extends Answer> answer = analysis.find(line.kind());
    return switch (line) {
      case ROOTSTOCK -> JsonValues.orNull(analysis.rootstock().map(VerdictJson::of));
      case DIFFICULTY, IMPORTANCE ->
          answer.map(found -> Wording.of(found).table().toJson()).orElse(new JsonArray());
      default -> JsonValues.orNull(answer.map(AnalysisJson::inFull));
    };
  }

  private static JsonObject inFull(Answer answer) {
    AnswerWords words = Wording.of(answer);
    JsonObject object = new JsonObject();
    object.addProperty("question", words.question());
    object.addProperty("answer", words.headline());
    object.add("text", JsonValues.words(words.paragraphs()));
    JsonObject tables = new JsonObject();
    words.tables().forEach(table -> tables.add(table.key(), table.toJson()));
    object.add("tables", tables);
    return object;
  }

  private JsonArray absent() {
    JsonArray absent = new JsonArray();
    for (Unanswered missing : analysis.unanswered()) {
      JsonObject one = new JsonObject();
      one.addProperty("question", UnansweredWords.question(missing));
      one.addProperty("reason", UnansweredWords.reason(missing));
      absent.add(one);
    }
    return absent;
  }

  private JsonObject records() {
    Provenance provenance = fit.cells().provenance();
    JsonObject records = new JsonObject();
    records.addProperty("read", provenance.rowsRead());
    records.addProperty("kept", provenance.rowsKept());
    records.addProperty("setAside", provenance.rowsSetAside());
    records.addProperty("grafts", fit.cells().graftsTotal());
    records.addProperty("takes", fit.cells().takesTotal());
    JsonObject leftOut = new JsonObject();
    fit.leftOut().forEach(leftOut::addProperty);
    records.add("graftsLeftOut", leftOut);
    return records;
  }

  private JsonObject fit() {
    JsonObject object = new JsonObject();
    object.addProperty("logLikelihood", fit.logLikelihood());
    object.addProperty("logLikelihoodOfCounts", fit.logLikelihoodOfCounts());
    object.addProperty("cells", fit.cells().size());
    object.addProperty("parameters", fit.parameters());
    JsonArray fixed = new JsonArray();
    for (FixedEffect effect : fit.fixed(analysis.options().coverage())) {
      JsonObject one = new JsonObject();
      one.addProperty("term", effect.term());
      one.addProperty("level", effect.level());
      one.add("estimate", JsonValues.number(effect.estimate()));
      one.add("standardError", JsonValues.number(effect.standardError()));
      JsonValues.range(one, effect.interval());
      fixed.add(one);
    }
    object.add("fixed", fixed);
    object.add("varying", varying());
    JsonArray warnings = new JsonArray();
    fit.warnings().forEach(warning -> warnings.add(warning.sentence()));
    object.add("warnings", warnings);
    return object;
  }

  private JsonArray varying() {
    JsonArray varying = new JsonArray();
    for (int k = 0; k < fit.varying().size(); k++) {
      VaryingFactor factor = fit.varying().get(k);
      JsonObject one = new JsonObject();
      one.addProperty("factor", factor.factor());
      one.addProperty("levels", factor.levels().size());
      one.add("standardDeviation", JsonValues.number(factor.standardDeviation()));
      JsonValues.range(one, analysis.spreads().get(k));
      varying.add(one);
    }
    return varying;
  }

  private JsonArray levels() {
    JsonArray levels = new JsonArray();
    for (VaryingFactor factor : fit.varying()) {
      for (int l = 0; l < factor.levels().size(); l++) {
        JsonObject one = new JsonObject();
        one.addProperty("factor", factor.factor());
        one.addProperty("level", factor.levels().get(l));
        one.add("levelEffect", JsonValues.number(factor.levelEffect(l)));
        one.add("levelEffectSd", JsonValues.number(factor.levelEffectSd(l)));
        one.addProperty("grafts", factor.grafts(l));
        one.addProperty("takes", factor.takes(l));
        levels.add(one);
      }
    }
    return levels;
  }
}
