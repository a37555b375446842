package org.taketally.answers;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.terms.Interval;
import org.taketally.terms.Provenance;

/**
 * An analysis for other programs. Keys are stable and described in docs/commands.md; estimates of
 * the fit are logits, everything else is a share of 1.
 */
public final class AnalysisJson {

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
   * @return keys records, fit, levels, difficulty, rootstock, whatMovesTake, absent
   */
  public static JsonObject of(Analysis analysis) {
    return new AnalysisJson(analysis).all();
  }

  private JsonObject all() {
    JsonObject all = new JsonObject();
    all.add("records", records());
    all.add("fit", fit());
    all.add("levels", levels());
    all.add(
        "difficulty",
        analysis.difficulty().<JsonElement>map(d -> d.table().toJson()).orElse(new JsonArray()));
    all.add(
        "rootstock",
        analysis.rootstock().<JsonElement>map(this::rootstock).orElse(JsonNull.INSTANCE));
    all.add("whatMovesTake", analysis.whatMovesTake().table().toJson());
    JsonArray absent = new JsonArray();
    for (Absent missing : analysis.absent()) {
      JsonObject one = new JsonObject();
      one.addProperty("question", missing.question());
      one.addProperty("reason", missing.reason());
      absent.add(one);
    }
    all.add("absent", absent);
    return all;
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
    for (FixedEffect effect : fit.fixed(analysis.options().level())) {
      JsonObject one = new JsonObject();
      one.addProperty("term", effect.term());
      one.addProperty("level", effect.level());
      one.add("estimate", number(effect.estimate()));
      one.add("standardError", number(effect.standardError()));
      range(one, effect.interval());
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
      one.add("standardDeviation", number(factor.standardDeviation()));
      range(one, analysis.spreads().get(k));
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
        one.add("mode", number(factor.modes()[l]));
        one.add("conditionalSd", number(factor.conditionalSds()[l]));
        one.addProperty("grafts", factor.grafts()[l]);
        one.addProperty("takes", factor.takes()[l]);
        levels.add(one);
      }
    }
    return levels;
  }

  private JsonObject rootstock(RootstockVerdict rootstock) {
    JsonObject object = verdict(rootstock.type());
    object.add(
        "stockCondition",
        rootstock.condition().<JsonElement>map(this::verdict).orElse(JsonNull.INSTANCE));
    return object;
  }

  private JsonObject verdict(FactorVerdict verdict) {
    JsonObject object = new JsonObject();
    object.addProperty("factor", verdict.factor());
    object.addProperty("verdict", verdict.verdict().words());
    object.addProperty("margin", verdict.options().margin());
    object.add("reasons", words(verdict.reasons()));
    object.add("standingOut", words(verdict.standingOut()));
    List<AnswerTable> tables = verdict.tables();
    object.add("pairs", tables.get(0).toJson());
    object.add("levels", tables.get(1).toJson());
    object.add("tests", tables.get(2).toJson());
    object.add("spread", verdict.size().<JsonElement>map(this::spread).orElse(JsonNull.INSTANCE));
    object.add(
        "smallestDetectable",
        verdict.detectable().<JsonElement>map(AnalysisJson::detectable).orElse(JsonNull.INSTANCE));
    JsonObject entanglement = new JsonObject();
    entanglement.addProperty("comparable", verdict.entanglement().comparable());
    entanglement.add("efficiency", number(verdict.entanglement().efficiency()));
    entanglement.add("ties", verdict.entanglement().table().toJson());
    object.add("entanglement", entanglement);
    return object;
  }

  private JsonObject spread(FactorVerdict.Size size) {
    JsonObject object = new JsonObject();
    object.add("standardDeviation", estimate(size.standardDeviation()));
    object.add("largestDifference", estimate(size.largest()));
    object.add("chanceWithinMargin", number(size.chanceWithinMargin()));
    return object;
  }

  private static JsonObject detectable(FactorVerdict.Detectable detectable) {
    JsonObject object = new JsonObject();
    object.add("difference", number(detectable.smallestDifference()));
    object.add("equivalenceMargin", number(detectable.equivalenceMargin()));
    object.add(
        "moreGrafts",
        detectable.moreGrafts().isPresent()
            ? new JsonPrimitive(detectable.moreGrafts().getAsLong())
            : JsonNull.INSTANCE);
    return object;
  }

  private static JsonObject estimate(Estimate estimate) {
    JsonObject object = new JsonObject();
    object.add("value", number(estimate.value()));
    range(object, estimate.interval());
    return object;
  }

  private static void range(JsonObject object, Interval interval) {
    object.add("low", number(interval.low()));
    object.add("high", number(interval.high()));
  }

  private static JsonArray words(List<String> sentences) {
    JsonArray array = new JsonArray();
    sentences.forEach(array::add);
    return array;
  }

  /** JSON has no NaN or infinity. */
  private static JsonElement number(double value) {
    return Double.isFinite(value) ? new JsonPrimitive(value) : JsonNull.INSTANCE;
  }
}
