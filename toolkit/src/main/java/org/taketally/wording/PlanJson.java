package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.taketally.answers.verdict.Verdict;
import org.taketally.plan.layout.PairEfficiency;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.ByRate;
import org.taketally.plan.order.OnHand;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.VerdictChances;

/** Plans as JSON, for other programs; keys are documented in docs/planning.md and ordering.md. */
public final class PlanJson {

  private PlanJson() {}

  /**
   * A trial's size.
   *
   * @param size as worked out
   * @return an object
   */
  public static JsonObject of(TrialSize size) {
    JsonObject json = new JsonObject();
    json.addProperty("firstTake", size.question().firstTake());
    json.addProperty("secondTake", size.question().secondTake());
    json.addProperty("margin", size.question().margin());
    json.addProperty("power", size.question().power());
    json.addProperty("offType", size.question().offType());
    json.addProperty("sharedSpread", size.question().sharedSpread());
    json.add("difference", need(size.difference()));
    json.add("equivalence", need(size.equivalence()));
    return json;
  }

  private static JsonObject need(TrialSize.Need need) {
    JsonObject json = new JsonObject();
    json.addProperty("reason", camel(need.reason()));
    json.add("firstGrafts", number(need.firstGrafts()));
    json.add("secondGrafts", number(need.secondGrafts()));
    json.add("firstUnits", number(need.firstUnits()));
    json.add("secondUnits", number(need.secondUnits()));
    json.addProperty("unitSize", need.unitSize());
    json.addProperty("mostChance", need.mostChance());
    return json;
  }

  /**
   * A layout.
   *
   * @param layout which graft goes where
   * @return an object
   */
  public static JsonObject of(TrialLayout layout) {
    JsonObject json = new JsonObject();
    json.addProperty("kind", camel(layout.kind()));
    json.addProperty("seed", layout.plan().seed());
    json.addProperty("grafts", layout.grafts());
    json.add("pairings", efficiency(layout.pairings()));
    json.add("rootstocks", layout.rootstocks().map(PlanJson::efficiency).orElse(null));
    json.add("atBest", number(layout.atBest()));
    JsonArray plots = new JsonArray();
    layout
        .plots()
        .forEach(
            plot -> {
              JsonObject one = new JsonObject();
              one.addProperty("number", plot.number());
              one.addProperty("grafter", plot.session().grafter());
              one.addProperty("day", plot.session().day());
              one.addProperty("block", plot.block());
              one.addProperty("bed", plot.bed().orElse(null));
              one.addProperty("cultivar", plot.pairing().cultivar());
              one.addProperty("rootstock", plot.pairing().rootstock());
              one.addProperty("grafts", plot.grafts());
              plots.add(one);
            });
    json.add("plots", plots);
    return json;
  }

  private static JsonObject efficiency(PairEfficiency efficiency) {
    JsonObject json = new JsonObject();
    json.addProperty("average", efficiency.average());
    json.addProperty("worst", efficiency.worst());
    return json;
  }

  /**
   * Chances of verdicts.
   *
   * @param chances from trials made up
   * @return an object
   */
  public static JsonObject of(VerdictChances chances) {
    JsonObject json = new JsonObject();
    json.addProperty("trials", chances.trials());
    json.addProperty("settled", chances.settled());
    JsonObject verdicts = new JsonObject();
    for (Verdict verdict : Verdict.values()) {
      verdicts.addProperty(Names.of(verdict), chances.chance(verdict));
    }
    json.add("verdicts", verdicts);
    json.addProperty("unanswered", (double) chances.unanswered() / chances.trials());
    return json;
  }

  /**
   * An order.
   *
   * @param order grafts and sticks line by line
   * @param there what the grafts and sticks there are give, one a line
   * @param today the day the plan is made
   * @return an object
   */
  public static JsonObject of(GraftOrder order, List<Optional<OnHand>> there, LocalDate today) {
    JsonObject json = new JsonObject();
    json.addProperty("sure", order.terms().assurance());
    json.addProperty("trees", order.treesWanted());
    json.addProperty("treesAnswered", order.treesAnswered());
    json.addProperty("grafts", order.graftsNeeded());
    json.addProperty("sticks", order.sticksNeeded());
    json.add("chanceOfAll", number(order.probabilityOfAll()));
    json.addProperty("today", today.toString());
    JsonArray seasons = new JsonArray();
    order.seasons().forEach(season -> seasons.add(season(season)));
    json.add("seasons", seasons);
    JsonArray lines = new JsonArray();
    for (int i = 0; i < there.size(); i++) {
      GraftOrder.Line line = order.lines().get(i);
      JsonObject one = line(line);
      one.addProperty("duePassed", order.passed(today).contains(line));
      one.add("onHand", there.get(i).<JsonElement>map(PlanJson::onHand).orElse(JsonNull.INSTANCE));
      lines.add(one);
    }
    json.add("lines", lines);
    return json;
  }

  private static JsonObject season(GraftOrder.Season season) {
    JsonObject json = new JsonObject();
    json.addProperty("dueFrom", season.from().map(Object::toString).orElse(null));
    json.addProperty("dueTo", season.to().map(Object::toString).orElse(null));
    json.addProperty("lines", season.lines().size());
    json.addProperty("grafts", season.graftsNeeded());
    json.addProperty("sticks", season.sticksNeeded());
    json.add("chanceOfAll", number(season.probabilityOfAll()));
    return json;
  }

  private static JsonObject onHand(OnHand there) {
    JsonObject json = new JsonObject();
    json.add("sticks", number(there.sticks()));
    json.addProperty("grafts", there.grafts());
    json.addProperty("trees", there.trees().expected());
    json.addProperty("treesLow", there.trees().low());
    json.addProperty("treesHigh", there.trees().high());
    json.addProperty("chance", there.chance());
    return json;
  }

  private static JsonObject line(GraftOrder.Line line) {
    JsonObject json = new JsonObject();
    json.addProperty("cultivar", line.line().cultivar());
    json.addProperty("rootstock", line.line().rootstock().orElse(null));
    json.addProperty("due", line.line().due().map(Object::toString).orElse(null));
    json.addProperty("trees", line.line().trees());
    json.addProperty("share", line.share());
    json.addProperty("shareLow", line.shareRange().low());
    json.addProperty("shareHigh", line.shareRange().high());
    json.addProperty("byRate", line.byRate().map(ByRate::grafts).orElse(null));
    json.addProperty("chanceByRate", line.byRate().map(ByRate::probability).orElse(null));
    json.add("grafts", number(line.grafts()));
    json.add("sticks", number(line.sticks()));
    json.add("cost", number(line.cost()));
    json.addProperty("shortInBadSeason", line.byRate().map(ByRate::shortInBadSeason).orElse(null));
    return json;
  }

  private static JsonElement number(OptionalInt value) {
    return value.isPresent() ? new JsonPrimitive(value.getAsInt()) : JsonNull.INSTANCE;
  }

  private static JsonElement number(OptionalDouble value) {
    return value.isPresent() ? new JsonPrimitive(value.getAsDouble()) : JsonNull.INSTANCE;
  }

  static String camel(Enum<?> constant) {
    String[] words = constant.name().toLowerCase(Locale.ROOT).split("_", -1);
    StringBuilder name = new StringBuilder(words[0]);
    for (int i = 1; i < words.length; i++) {
      name.append(Character.toUpperCase(words[i].charAt(0))).append(words[i].substring(1));
    }
    return name.toString();
  }
}
