package org.taketally.publish;

import java.util.List;
import java.util.function.Function;
import org.taketally.answers.Answer;
import org.taketally.figure.AnswerFigures;
import org.taketally.figure.FigureSize;
import org.taketally.publish.Block.Drawing;
import org.taketally.publish.Block.Figure;

/** Figures as blocks of a page, each in both layouts. */
final class FigureBlocks {

  private FigureBlocks() {}

  /** Figures of an answer, the main one first; none for kinds that have no figure. */
  static List<Block> of(Answer answer) {
    return AnswerFigures.of(answer).stream().map(each -> (Block) figure(each::draw)).toList();
  }

  /** A figure in both layouts. */
  static Figure figure(Function<FigureSize, String> draw) {
    return new Figure(new Drawing(draw.apply(FigureSize.WIDE), draw.apply(FigureSize.NARROW)));
  }
}
