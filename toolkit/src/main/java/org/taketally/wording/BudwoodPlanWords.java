package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.BudwoodPlan.Buds;
import org.taketally.plan.order.BudwoodPlan.Line;
import org.taketally.plan.order.StorageLimits;

/** What to cut for requests of budwood, in words. */
public final class BudwoodPlanWords {

  private final BudwoodPlan plan;

  private BudwoodPlanWords(BudwoodPlan plan) {
    this.plan = plan;
  }

  /**
   * The words for a plan.
   *
   * @param plan what to cut and when
   * @return the words
   */
  public static BudwoodPlanWords of(BudwoodPlan plan) {
    return new BudwoodPlanWords(plan);
  }

  /**
   * What can be met.
   *
   * @return one sentence
   */
  public String headline() {
    long met = plan.lines().stream().filter(Line::canBeMet).count();
    long waiting = plan.lines().stream().filter(line -> line.waitsForBuds(plan.today())).count();
    if (met == 0) {
      return "None of %s can be met as things are on %s.%s"
          .formatted(
              Words.count(plan.lines().size(), "request"),
              plan.today(),
              waiting == 0 ? "" : " %d can be if the buds get on in time.".formatted(waiting));
    }
    return "%d of %s can be met as things are on %s: %s to cut for %s, those that spoil included.%s"
        .formatted(
            met,
            Words.count(plan.lines().size(), "request"),
            plan.today(),
            Words.count(plan.sticks(), "stick"),
            met == 1 ? "it" : "them",
            waiting == 0 ? "" : " %d more can be if the buds get on in time.".formatted(waiting));
  }

  /**
   * What to mind, request by request.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>(shared());
    for (Line line : plan.lines()) {
      String who = line.request().cultivar();
      if (line.late()) {
        more.add("%s: wanted for %s, which has passed.".formatted(who, line.request().needed()));
      } else if (line.missing() > 0) {
        more.add(
            "%s for %s: %s short; %d on the trees can be had for it, %d would have to be cut. Offer fewer, or ask who else has that cultivar."
                .formatted(
                    who,
                    line.request().needed(),
                    Words.count(line.missing(), "stick"),
                    line.cut() - line.missing(),
                    line.cut()));
      }
      if (line.buds() == Buds.NOT_YET && !line.cutOn().isAfter(plan.today())) {
        more.add(
            "%s: buds are %s, %s is wanted, and the wood would have to be cut today: agree on a later day, or offer what there is."
                .formatted(who, stage(line.request().buds()), wanted(line)));
      } else if (line.buds() == Buds.NOT_YET) {
        more.add(
            "%s: buds are %s, %s is wanted: look again before cutting on %s."
                .formatted(who, stage(line.request().buds()), wanted(line), line.cutOn()));
      } else if (line.buds() == Buds.PAST) {
        more.add(
            "%s: buds are %s already, %s is wanted: cut from other trees, or offer what there is."
                .formatted(who, stage(line.request().buds()), wanted(line)));
      } else if (line.buds() == Buds.NOT_SAID) {
        more.add(
            "%s: look whether buds are %s before cutting; the list doesn't say (column buds)."
                .formatted(who, wanted(line)));
      }
    }
    more.add(keeping(plan.storage()));
    more.add(
        "Before budwood changes places, ask what plant health rules and plant variety rights say"
            + " where you are; check that you may multiply a protected cultivar.");
    return more;
  }

  /** Cultivars that several requests share which can still be met. */
  private List<String> shared() {
    Map<String, List<Line>> cultivars = new LinkedHashMap<>();
    plan.lines().stream()
        .filter(line -> !line.late())
        .forEach(
            line ->
                cultivars
                    .computeIfAbsent(line.request().plainCultivar(), name -> new ArrayList<>())
                    .add(line));
    return cultivars.values().stream()
        .filter(lines -> lines.size() > 1)
        .map(
            lines ->
                "%s is asked for in %s, %s to cut in all: they share what is on its trees, the earliest day first."
                    .formatted(
                        lines.get(0).request().cultivar(),
                        Words.count(lines.size(), "request"),
                        Words.count(lines.stream().mapToLong(Line::cut).sum(), "stick")))
        .toList();
  }

  private static String wanted(Line line) {
    return stage(line.request().wanted());
  }

  private static String stage(java.util.Optional<?> stage) {
    return stage.map(s -> s.toString().toLowerCase(Locale.ROOT)).orElse("not said");
  }

  private static String keeping(StorageLimits storage) {
    List<String> parts = new ArrayList<>();
    storage
        .best()
        .ifPresent(days -> parts.add("best up to %s".formatted(Words.count(days, "day"))));
    storage
        .limit()
        .ifPresent(
            days ->
                parts.add(
                    "look twice beyond %s (crop profile)".formatted(Words.count(days, "day"))));
    storage
        .falling()
        .ifPresent(
            days ->
                parts.add(
                    "in your records take has fallen by the margin after %s"
                        .formatted(Words.count(days, "day"))));
    if (storage.falling().isEmpty() && storage.seenUpTo().isPresent()) {
      parts.add(
          "in your records take doesn't fall by the margin up to %s"
              .formatted(Words.count(storage.seenUpTo().getAsInt(), "day")));
    }
    return parts.isEmpty()
        ? "How long the wood keeps isn't known: say --crop, or give --records with the days wood"
            + " was cut and grafted."
        : "Keeping: %s. Kept moist and cool, as usual for the crop."
            .formatted(String.join("; ", parts));
  }

  /**
   * Headings of {@link #table}.
   *
   * @return one a column
   */
  public List<String> headings() {
    return List.of(
        "Cultivar", "Sticks asked", "To cut", "Short", "Buds", "Cut on", "Not before", "Use by");
  }

  /**
   * One row a request.
   *
   * @return texts
   */
  public List<List<String>> table() {
    return plan.lines().stream().map(BudwoodPlanWords::row).toList();
  }

  private static List<String> row(Line line) {
    return line.late()
        ? List.of(
            line.request().cultivar(),
            Words.count(line.request().sticks()),
            "–",
            "",
            "–",
            "too late",
            "–",
            "–")
        : rowInTime(line);
  }

  private static List<String> rowInTime(Line line) {
    return List.of(
        line.request().cultivar(),
        Words.count(line.request().sticks()),
        Words.count(line.cut()),
        line.missing() == 0 ? "" : Words.count(line.missing()),
        buds(line.buds()),
        line.cutOn().toString(),
        line.notBefore().map(Object::toString).orElse("–"),
        line.useBy().map(Object::toString).orElse("–"));
  }

  private static String buds(Buds buds) {
    return switch (buds) {
      case READY -> "ready";
      case NOT_YET -> "not yet";
      case PAST -> "past it";
      case NOT_SAID -> "not said";
    };
  }

  /**
   * As JSON; keys are documented in docs/ordering.md.
   *
   * @return an object
   */
  public JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("today", plan.today().toString());
    json.addProperty("sticks", plan.sticks());
    JsonArray lines = new JsonArray();
    for (Line line : plan.lines()) {
      JsonObject one = new JsonObject();
      one.addProperty("cultivar", line.request().cultivar());
      one.addProperty("asked", line.request().sticks());
      one.addProperty("needed", line.request().needed().toString());
      one.addProperty("cut", line.cut());
      one.addProperty("missing", line.missing());
      one.addProperty("buds", buds(line.buds()));
      one.addProperty("cutOn", line.cutOn().toString());
      one.addProperty("notBefore", line.notBefore().map(Object::toString).orElse(null));
      one.addProperty("useBy", line.useBy().map(Object::toString).orElse(null));
      one.addProperty("canBeMet", line.canBeMet());
      one.addProperty("waitsForBuds", line.waitsForBuds(plan.today()));
      lines.add(one);
    }
    json.add("requests", lines);
    return json;
  }
}
