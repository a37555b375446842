package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.taketally.answers.prediction.SecondOpinions;

/** Other ways of predicting, in words. */
final class SecondOpinionsWords implements AnswerWords {

  private final SecondOpinions answer;

  SecondOpinionsWords(SecondOpinions answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    return answer
        .best()
        .map(this::standing)
        .orElseGet(
            () ->
                "No second opinion: %s (%s)."
                    .formatted(answer.none().map(this::why).orElse(""), grafts()));
  }

  private String grafts() {
    return Words.count(answer.tally().grafts(), "graft");
  }

  private String why(SecondOpinions.NoOpinion none) {
    String cause = none.cause().map(Throwable::getMessage).orElse("");
    return switch (none.reason()) {
      case ONE_SEASON -> "it takes two seasons or more to predict one from the others";
      case SEASON_MISSING -> "some grafts have no season";
      case NOTHING_LASTS -> "the model has nothing that carries over from one season to another";
      case PART_CANT_BE_FITTED ->
          "a part of the records small enough to compare on can't be fitted: " + cause;
      case REST_CANT_BE_FITTED -> "without one of the seasons the rest can't be fitted: " + cause;
    };
  }

  private String standing(SecondOpinions.Best best) {
    String name = Names.of(best.way());
    String verdict =
        switch (best.standing()) {
          case BETTER ->
              "The "
                  + name
                  + " predicts better than this model, so something moves take that the model"
                  + " doesn't know (try a curve, or let the pairing vary)";
          case WORSE -> "No other way of predicting tried does as well as this model";
          case ABOUT_AS_GOOD ->
              "No other way of predicting tried does clearly better than this model";
        };
    String from =
        "; on seasons not seen it gave what happened a typical chance of %s, the best other way, the %s, %s (%s)"
            .formatted(
                typicalChance(SecondOpinions.Way.THIS_MODEL),
                name,
                typicalChance(best.way()),
                grafts());
    return verdict + from + "." + agreement();
  }

  /** Geometric mean of the chances given to what happened; one decimal, as they lie close. */
  private String typicalChance(SecondOpinions.Way way) {
    double logScore =
        answer.opinions().stream()
            .filter(opinion -> opinion.way() == way)
            .findFirst()
            .orElseThrow()
            .logScore();
    return String.format(Locale.ROOT, "%.1f %%", 100 * Math.exp(logScore));
  }

  private String agreement() {
    OptionalDouble least =
        answer.opinions().stream()
            .mapToDouble(SecondOpinions.Opinion::rankAgreement)
            .filter(r -> !Double.isNaN(r))
            .min();
    if (least.isEmpty()) {
      return "";
    }
    double r = least.getAsDouble();
    return " They put the cultivars in %s order (rank agreement at least %.2f of 1)."
        .formatted(r >= 0.9 ? "nearly the same" : r >= 0.7 ? "a similar" : "another", r);
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (answer.subsampled()) {
      lines.add(
          "To save time, %s drawn evenly from the records were used."
              .formatted(Words.count(answer.tally().grafts(), "graft")));
    }
    return lines;
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "second-opinions",
            "Ways of predicting, each judged on a %s it has not seen".formatted(answer.heldOut()),
            AnswerColumn.MODEL,
            AnswerColumn.LOG_SCORE,
            AnswerColumn.BRIER,
            AnswerColumn.CALIBRATION_SLOPE,
            AnswerColumn.RANK_AGREEMENT);
    for (SecondOpinions.Opinion o : answer.opinions()) {
      table.row(
          Names.of(o.way()), o.logScore(), o.brier(), o.calibrationSlope(), o.rankAgreement());
    }
    return table.build();
  }

  /** {@inheritDoc} The ways of predicting, what moves the random forest, and calibration. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder weights =
        AnswerTable.of(
            "forest-weights",
            "What moves the random forest's predictions",
            AnswerColumn.FACTOR,
            AnswerColumn.SHARE);
    answer.importance().forEach(i -> weights.row(i.factor(), i.share()));
    return List.of(mainTable(), weights.build(), calibration());
  }

  private AnswerTable calibration() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "second-opinions-calibration",
            "Predicted against counted take, by tenths of the prediction",
            AnswerColumn.MODEL,
            AnswerColumn.PREDICTED,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE);
    for (SecondOpinions.Opinion opinion : answer.opinions()) {
      opinion.tenths().forEach(t -> table.row(Names.of(opinion.way()), t.predicted(), t.tally()));
    }
    return table.build();
  }
}
