package org.taketally.wording;

import org.taketally.answers.Condition;
import org.taketally.answers.checks.FitChecks.CellScatter;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.Contrast;
import org.taketally.answers.checks.FitChecks.ExtremeCell;
import org.taketally.answers.checks.FitChecks.GraftsStandAlone;
import org.taketally.answers.checks.FitChecks.GraftsUnused;
import org.taketally.answers.checks.FitChecks.LargestGap;
import org.taketally.answers.checks.FitChecks.LeftOver;
import org.taketally.answers.checks.FitChecks.MostSwayed;
import org.taketally.answers.checks.FitChecks.SearchWarning;
import org.taketally.answers.checks.FitChecks.SeasonInfluence;
import org.taketally.answers.checks.FitChecks.SeasonsUntried;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.checks.FitChecks.UnexpectedCells;

/** What a check of the fit looked at, what it found and what to do, in words. */
final class CheckWords {

  private final Check check;

  CheckWords(Check check) {
    this.check = check;
  }

  /** What was checked. */
  String name() {
    return switch (check.kind()) {
      case LEFT_OVER_SCATTER -> "left-over scatter";
      case SCATTER_BETWEEN_CELLS -> "scatter between cells";
      case CALIBRATION -> "predicted against counted take";
      case SEASONS_LEFT_OUT -> "seasons left out";
      case NONE_OR_ALL_TAKEN -> "cells with none or all taken";
      case SEARCH -> "the search";
      case GRAFTS_LEFT_OUT -> "grafts left out";
    };
  }

  private boolean fine() {
    return check.state() == State.FINE || check.state() == State.NOT_CHECKABLE;
  }

  /** What was found. */
  String finding() {
    if (check.finding() instanceof LeftOver left) {
      return (fine()
              ? "what the model leaves unexplained looks like chance (largest gap %s of the %s)."
              : "what the model leaves unexplained doesn't look like chance (largest gap %s of the"
                  + " %s).")
          .formatted(Words.percent(left.gap()), Words.count(left.cells(), "cell"));
    }
    if (check.finding() instanceof GraftsStandAlone) {
      return "can't be seen, as nearly all grafts stand alone in their conditions.";
    }
    if (check.finding() instanceof CellScatter scatter) {
      return scatter(scatter);
    }
    if (check.finding() instanceof LargestGap gap) {
      return gap(gap);
    }
    if (check.finding() instanceof MostSwayed swayed) {
      return swayed(swayed.most());
    }
    if (check.finding() instanceof UnexpectedCells cells) {
      return cells(cells);
    }
    return otherFinding();
  }

  private String otherFinding() {
    if (check.finding() instanceof SeasonsUntried untried) {
      return switch (untried) {
        case NOTHING_TO_TRY ->
            "can't be tried: the records or the model have nothing to try it with.";
        case REST_CANT_BE_FITTED ->
            "can't be tried: no season can be left out and the rest still be fitted.";
      };
    }
    if (check.finding() instanceof SearchWarning search) {
      return search.warning().sentence();
    }
    GraftsUnused unused = (GraftsUnused) check.finding();
    return "%s (%s) were not used because %s wasn't recorded."
        .formatted(
            Words.count(unused.grafts(), "graft"),
            Words.percent(unused.share()),
            Words.column(unused.column()));
  }

  private String scatter(CellScatter scatter) {
    String found =
        fine()
            ? "about what chance gives"
            : scatter.ratio() > 1
                ? "takes scatter more than chance allows"
                : "takes are more even than chance allows";
    return found
        + " (%.2f times as much, %s)."
            .formatted(scatter.ratio(), Words.count(scatter.cells(), "cell"));
  }

  private String gap(LargestGap gap) {
    return "where %s was predicted, %s was counted (%s), the largest gap of %d groups%s."
        .formatted(
            Words.percent(gap.worst().predicted()),
            Words.percent(gap.worst().tally().rate()),
            Words.count(gap.worst().tally().grafts(), "graft"),
            gap.groups(),
            fine() ? "; chance explains the gaps well enough" : "");
  }

  private static String swayed(SeasonInfluence most) {
    return "leaving out %s (%s) moves %s most, by %.1f times its usual error."
        .formatted(
            most.season(),
            Words.count(most.grafts(), "graft"),
            contrast(most.contrast()),
            most.largestShift());
  }

  private static String contrast(Contrast contrast) {
    return "%s (%s against %s)"
        .formatted(
            Words.column(contrast.to().column()), shown(contrast.to()), shown(contrast.from()));
  }

  private static String shown(Condition condition) {
    return condition.isNumber() ? Words.amount(condition.number(), "") : condition.level();
  }

  private static String cells(UnexpectedCells cells) {
    if (cells.cells().isEmpty()) {
      return "none that the other grafts make unlikely.";
    }
    ExtremeCell first = cells.cells().get(0);
    return "%s where that was very unlikely; first: %s, %s of %s where about %s was expected."
        .formatted(
            Words.count(cells.cells().size(), "cell"),
            String.join(", ", first.conditions().stream().map(CheckWords::part).toList()),
            Words.count(first.tally().takes(), "take"),
            Words.count(first.tally().grafts(), "graft"),
            Words.percent(first.predicted()));
  }

  private static String part(Condition condition) {
    return condition.isNumber()
        ? Words.column(condition.column()) + " " + Words.amount(condition.number(), "")
        : Names.of(condition);
  }

  /** What to do; empty if nothing. */
  String remedy() {
    if (fine()) {
      return "";
    }
    return switch (check.kind()) {
      case LEFT_OVER_SCATTER ->
          "Something that moves take is missing from the model: try grafting day, block, bud"
              + " stage or a curve instead of a straight line.";
      case SCATTER_BETWEEN_CELLS -> scatterRemedy((CellScatter) check.finding());
      case CALIBRATION ->
          "Predictions are off in parts of the records: let a number enter as a curve, or let"
              + " the pairing vary.";
      case SEASONS_LEFT_OUT ->
          "That answer leans on one season: read what was different in it before you trust it.";
      case NONE_OR_ALL_TAKEN ->
          "Look these up in the record book: a lost lot, a mix-up of labels or of the counts is"
              + " more likely than chance.";
      case SEARCH -> "";
      case GRAFTS_LEFT_OUT ->
          "Fill it in, or leave %s out of the model and see whether the answers change."
              .formatted(Words.column(((GraftsUnused) check.finding()).column()));
    };
  }

  private static String scatterRemedy(CellScatter scatter) {
    return scatter.ratio() < 1
        ? "Ask whether counts were estimated, rounded or filled in later."
        : "Grafts made together share a fate the model doesn't know: let grafting day, batch or"
            + " block vary. Until then ranges are too narrow, by about %s."
                .formatted(Words.percent(1 - 1 / Math.sqrt(scatter.ratio())));
  }
}
