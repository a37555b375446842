package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.taketally.answers.Answer;
import org.taketally.answers.Difficulty;
import org.taketally.answers.Entanglement;
import org.taketally.answers.FactorVerdict;
import org.taketally.answers.FitChecks;
import org.taketally.answers.Grafters;
import org.taketally.answers.LateLoss;
import org.taketally.answers.MarginCost;
import org.taketally.answers.Pairings;
import org.taketally.answers.RootstockVerdict;
import org.taketally.answers.SecondOpinions;
import org.taketally.answers.StorageCurve;
import org.taketally.answers.WhatMovesTake;
import org.taketally.figure.FigureSize;
import org.taketally.figure.Figures;
import org.taketally.publish.Block.Drawing;
import org.taketally.publish.Block.Figure;

/** Which figures belong to which answer. */
final class AnswerFigures {

  private AnswerFigures() {}

  /** Figures of an answer, the main one first; none for kinds that have no figure. */
  static List<Block> of(Answer answer) {
    if (answer instanceof RootstockVerdict verdict) {
      return rootstock(verdict);
    }
    if (answer instanceof LateLoss loss) {
      return lateLoss(loss);
    }
    return single(answer);
  }

  private static List<Block> single(Answer answer) {
    if (answer instanceof FactorVerdict verdict) {
      return List.of(figure(size -> Figures.differences(verdict, size)));
    }
    if (answer instanceof Difficulty difficulty) {
      return List.of(figure(size -> Figures.difficulty(difficulty, size)));
    }
    if (answer instanceof WhatMovesTake movers) {
      return List.of(figure(size -> Figures.whatMovesTake(movers, size)));
    }
    if (answer instanceof StorageCurve curve) {
      return List.of(figure(size -> Figures.storageCurve(curve, size)));
    }
    if (answer instanceof Pairings pairings) {
      return List.of(figure(size -> Figures.pairings(pairings, size)));
    }
    if (answer instanceof Grafters grafters) {
      return List.of(figure(size -> Figures.grafters(grafters, size)));
    }
    if (answer instanceof FitChecks checks) {
      return List.of(figure(size -> Figures.calibration(checks, size)));
    }
    if (answer instanceof SecondOpinions opinions && !opinions.opinions().isEmpty()) {
      return List.of(figure(size -> Figures.secondOpinions(opinions, size)));
    }
    if (answer instanceof Entanglement entanglement) {
      return List.of(figure(size -> Figures.entanglement(entanglement, size)));
    }
    if (answer instanceof MarginCost cost) {
      return List.of(figure(size -> Figures.marginCost(cost, size)));
    }
    return List.of();
  }

  private static List<Block> rootstock(RootstockVerdict verdict) {
    List<Block> figures = new ArrayList<>(single(verdict.type()));
    verdict.condition().ifPresent(condition -> figures.addAll(single(condition)));
    return figures;
  }

  private static List<Block> lateLoss(LateLoss loss) {
    List<Block> figures = new ArrayList<>();
    figures.add(figure(size -> Figures.lateLoss(loss, size)));
    for (LateLoss.FactorLoss factor : loss.factors()) {
      figures.add(figure(size -> Figures.lateLossByLevel(loss, factor, size)));
    }
    return figures;
  }

  /** A figure in both layouts. */
  static Figure figure(Function<FigureSize, String> draw) {
    return new Figure(new Drawing(draw.apply(FigureSize.WIDE), draw.apply(FigureSize.NARROW)));
  }
}
