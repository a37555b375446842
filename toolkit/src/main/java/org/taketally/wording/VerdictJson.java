package org.taketally.wording;

import static org.taketally.wording.JsonValues.number;
import static org.taketally.wording.JsonValues.orNull;
import static org.taketally.wording.JsonValues.range;
import static org.taketally.wording.JsonValues.words;

import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.RootstockVerdict.OffType;
import org.taketally.answers.verdict.RootstockVerdict.TwoStocks;

/** The verdict on rootstocks for other programs. */
public final class VerdictJson {

  private VerdictJson() {}

  static JsonObject of(RootstockVerdict rootstock) {
    JsonObject object = verdict(rootstock.type());
    object.add("stockCondition", orNull(rootstock.condition().map(VerdictJson::verdict)));
    object.add("byHand", orNull(rootstock.byHand().map(VerdictJson::byHand)));
    object.add("offType", orNull(rootstock.offType().map(VerdictJson::offType)));
    return object;
  }

  private static JsonObject byHand(TwoStocks view) {
    JsonObject object = new JsonObject();
    object.addProperty("first", view.first());
    object.addProperty("second", StratifiedWords.others(view));
    object.add("difference", orNull(view.difference().map(VerdictJson::estimate)));
    object.add("oddsRatio", orNull(view.oddsRatio().map(VerdictJson::estimate)));
    object.add("agreement", number(view.agreement().pValue()));
    object.addProperty("sentence", StratifiedWords.sentence(view));
    object.add("cultivars", StratifiedWords.byCultivar(view).toJson());
    return object;
  }

  private static JsonObject offType(OffType offType) {
    JsonObject object = new JsonObject();
    JsonObject pure = new JsonObject();
    range(pure, offType.trueToType());
    object.add("trueToType", pure);
    object.add("largest", number(offType.largest()));
    object.add("largestIfPure", number(offType.largestIfPure()));
    object.addProperty("sentence", RootstockVerdictWords.sentence(offType));
    return object;
  }

  private static JsonObject verdict(FactorVerdict verdict) {
    JsonObject object = new JsonObject();
    object.addProperty("factor", verdict.factor());
    object.addProperty("verdict", Names.of(verdict.verdict()));
    object.addProperty("grafts", verdict.tally().grafts());
    object.addProperty("margin", verdict.options().margin());
    object.add("reasons", words(VerdictReasons.of(verdict)));
    object.add("standingOut", words(verdict.standingOut()));
    List<AnswerTable> tables = new FactorVerdictWords(verdict).tables();
    object.add("pairs", tables.get(0).toJson());
    object.add("levels", tables.get(1).toJson());
    object.add("tests", tables.get(2).toJson());
    object.add("spread", orNull(verdict.size().map(VerdictJson::spread)));
    object.add("smallestDetectable", orNull(verdict.detectable().map(VerdictJson::detectable)));
    JsonObject entanglement = new JsonObject();
    entanglement.addProperty("comparable", verdict.confounding().comparable());
    entanglement.add("efficiency", number(verdict.confounding().efficiency()));
    entanglement.add("ties", new ConfoundingWords(verdict.confounding()).table().toJson());
    object.add("entanglement", entanglement);
    return object;
  }

  private static JsonObject spread(FactorVerdict.Size size) {
    JsonObject object = new JsonObject();
    object.add("standardDeviation", estimate(size.standardDeviation()));
    object.add("largestDifference", estimate(size.largest()));
    object.add("chanceWithinMargin", number(size.probabilityWithinMargin()));
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
}
