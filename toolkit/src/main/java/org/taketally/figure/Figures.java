package org.taketally.figure;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.Answer;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.files.SafeFile;
import org.taketally.wording.language.Language;

/**
 * Every figure, each from one answer, as SVG text.
 *
 * <p>Each figure stands alone: its own light ground, system fonts, a title and a description made
 * from the numbers, marks told apart by shape and words, grafts printed beside what rests on them.
 * User text is escaped. The same answer gives the same bytes. Each method has a form for the size;
 * without it a figure is {@link FigureSize#WIDE}.
 */
public final class Figures {

  private Figures() {}

  /**
   * The main figure of an answer.
   *
   * @param answer any answer
   * @return an {@code <svg>} element
   * @throws IllegalArgumentException if such answers have no figure
   */
  public static String of(Answer answer) {
    return of(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #of(Answer)}.
   *
   * @param answer any answer
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   * @throws IllegalArgumentException if such answers have no figure
   */
  public static String of(Answer answer, FigureSize size) {
    List<AnswerFigures.AnswerFigure> figures = AnswerFigures.of(answer);
    if (figures.isEmpty()) {
      throw new IllegalArgumentException(
          "%s has no figure".formatted(answer.getClass().getSimpleName()));
    }
    return figures.get(0).draw(size);
  }

  /**
   * Saves the main figure of an answer.
   *
   * @param answer any answer
   * @param file ending in {@code .svg} or {@code .png}; a figure of that name is replaced
   * @return {@code file}
   * @throws IllegalArgumentException if such answers have no figure, or the name ends otherwise
   * @throws IOException if it can't be written
   */
  public static Path save(Answer answer, Path file) throws IOException {
    return save(of(answer), file);
  }

  /**
   * Saves a figure.
   *
   * @param svg as methods of this class, or {@code BarChart} and its like, give it
   * @param file ending in {@code .svg} or {@code .png}; a figure of that name is replaced
   * @return {@code file}
   * @throws IllegalArgumentException if the name ends otherwise
   * @throws IOException if it can't be written
   */
  public static Path save(String svg, Path file) throws IOException {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".svg")) {
      SafeFile.write(file, svg);
    } else if (name.endsWith(".png")) {
      byte[] picture = FigurePng.of(svg);
      SafeFile.write(file, out -> out.write(picture));
    } else {
      throw new IllegalArgumentException(
          "\"%s\" must end in .svg or .png".formatted(file.getFileName()));
    }
    return file;
  }

  /**
   * Cultivars from hard to easy: adjusted take, its likely range, the counted take, the band.
   *
   * @param answer the difficulty of each cultivar
   * @return an {@code <svg>} element
   */
  public static String difficulty(Difficulty answer) {
    return difficulty(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #difficulty(Difficulty)}.
   *
   * @param answer the difficulty of each cultivar
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String difficulty(Difficulty answer, FigureSize size) {
    return DifficultyFigure.draw(answer, size, Language.ENGLISH);
  }

  /**
   * As {@link #difficulty(Difficulty, FigureSize)}, in a language.
   *
   * @param answer what is shown
   * @param size shape it is laid out for
   * @param language of its words
   * @return an {@code <svg>} element
   */
  public static String difficulty(Difficulty answer, FigureSize size, Language language) {
    return DifficultyFigure.draw(answer, size, language);
  }

  /**
   * Differences between each two rootstocks against the margin.
   *
   * @param answer the verdict
   * @return an {@code <svg>} element
   */
  public static String rootstockDifferences(RootstockVerdict answer) {
    return differences(answer.type(), FigureSize.WIDE);
  }

  /**
   * As {@link #rootstockDifferences(RootstockVerdict)}.
   *
   * @param answer the verdict
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String rootstockDifferences(RootstockVerdict answer, FigureSize size) {
    return differences(answer.type(), size);
  }

  /**
   * Differences between each two levels of any factor against the margin.
   *
   * @param answer the verdict on the factor
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String differences(FactorVerdict answer, FigureSize size) {
    return DifferencesFigure.draw(answer, size, Language.ENGLISH);
  }

  /**
   * As {@link #differences(FactorVerdict, FigureSize)}, in a language.
   *
   * @param answer what is shown
   * @param size shape it is laid out for
   * @param language of its words
   * @return an {@code <svg>} element
   */
  public static String differences(FactorVerdict answer, FigureSize size, Language language) {
    return DifferencesFigure.draw(answer, size, language);
  }

  /**
   * Every factor on one scale, largest first, the one asked about standing out.
   *
   * @param answer what moves take
   * @return an {@code <svg>} element
   */
  public static String importance(FactorImportance answer) {
    return importance(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #importance(FactorImportance)}.
   *
   * @param answer what moves take
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String importance(FactorImportance answer, FigureSize size) {
    return ImportanceFigure.draw(answer, size, Language.ENGLISH);
  }

  /**
   * As {@link #importance(FactorImportance, FigureSize)}, in a language.
   *
   * @param answer what is shown
   * @param size shape it is laid out for
   * @param language of its words
   * @return an {@code <svg>} element
   */
  public static String importance(FactorImportance answer, FigureSize size, Language language) {
    return ImportanceFigure.draw(answer, size, language);
  }

  /**
   * Take against a number, with its likely range and where the records thin out.
   *
   * @param answer the curve
   * @return an {@code <svg>} element
   */
  public static String takeCurve(TakeCurve answer) {
    return takeCurve(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #takeCurve(TakeCurve)}.
   *
   * @param answer the curve
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String takeCurve(TakeCurve answer, FigureSize size) {
    return TakeCurveFigure.draw(answer, size, Language.ENGLISH);
  }

  /**
   * As {@link #takeCurve(TakeCurve, FigureSize)}, in a language.
   *
   * @param answer what is shown
   * @param size shape it is laid out for
   * @param language of its words
   * @return an {@code <svg>} element
   */
  public static String takeCurve(TakeCurve answer, FigureSize size, Language language) {
    return TakeCurveFigure.draw(answer, size, language);
  }

  /**
   * Pairings of cultivar and rootstock that take worse than both alone lead to expect.
   *
   * @param answer the pairings
   * @return an {@code <svg>} element
   */
  public static String pairings(Pairings answer) {
    return pairings(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #pairings(Pairings)}.
   *
   * @param answer the pairings
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String pairings(Pairings answer, FigureSize size) {
    return PairingsFigure.draw(answer, size);
  }

  /**
   * Grafters, as letters unless names were asked for.
   *
   * @param answer each grafter's adjusted take
   * @return an {@code <svg>} element
   */
  public static String grafters(Grafters answer) {
    return grafters(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #grafters(Grafters)}.
   *
   * @param answer each grafter's adjusted take
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String grafters(Grafters answer, FigureSize size) {
    return GraftersFigure.draw(answer, size);
  }

  /**
   * Predicted against counted take by tenths of the prediction.
   *
   * @param answer the checks of the fit
   * @return an {@code <svg>} element
   */
  public static String calibration(FitChecks answer) {
    return calibration(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #calibration(FitChecks)}.
   *
   * @param answer the checks of the fit
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String calibration(FitChecks answer, FigureSize size) {
    return CalibrationFigure.draw(answer, size);
  }

  /**
   * Predicted against counted take of every way of predicting, on seasons it had not seen.
   *
   * @param answer second opinions, at least one
   * @return an {@code <svg>} element
   */
  public static String secondOpinions(SecondOpinions answer) {
    return secondOpinions(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #secondOpinions(SecondOpinions)}.
   *
   * @param answer second opinions, at least one
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String secondOpinions(SecondOpinions answer, FigureSize size) {
    return CalibrationFigure.draw(answer, size);
  }

  /**
   * How much of the information about some levels is left.
   *
   * @param answer who met whom
   * @return SVG text, {@link FigureSize#WIDE}
   */
  public static String confounding(Confounding answer) {
    return confounding(answer, FigureSize.WIDE);
  }

  /**
   * How much of the information about some levels is left.
   *
   * @param answer who met whom
   * @param size room there is
   * @return SVG text
   */
  public static String confounding(Confounding answer, FigureSize size) {
    return ConfoundingFigure.draw(answer, size);
  }

  /**
   * What a saleable tree costs if take drops.
   *
   * @param answer cost and margin
   * @return SVG text, {@link FigureSize#WIDE}
   */
  public static String marginCost(MarginCost answer) {
    return marginCost(answer, FigureSize.WIDE);
  }

  /**
   * What a saleable tree costs if take drops.
   *
   * @param answer cost and margin
   * @param size room there is
   * @return SVG text
   */
  public static String marginCost(MarginCost answer, FigureSize size) {
    return MarginCostFigure.draw(answer, size);
  }

  /**
   * Grafts still alive after the first count, by the first factor with at most six levels, else all
   * together.
   *
   * @param answer late loss
   * @return an {@code <svg>} element
   */
  public static String lateLoss(LateLoss answer) {
    return lateLoss(answer, FigureSize.WIDE);
  }

  /**
   * As {@link #lateLoss(LateLoss)}.
   *
   * @param answer late loss
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String lateLoss(LateLoss answer, FigureSize size) {
    return LateLossFigure.draw(answer, size);
  }

  /**
   * Late loss of each level of a factor.
   *
   * @param answer late loss
   * @param factor one of its factors
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String lateLossByLevel(
      LateLoss answer, LateLoss.FactorLoss factor, FigureSize size) {
    return LateLossLevelsFigure.draw(answer, factor, size);
  }
}
