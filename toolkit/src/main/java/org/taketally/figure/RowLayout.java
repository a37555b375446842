package org.taketally.figure;

import java.util.List;
import java.util.function.Function;

/**
 * Where the columns and lines of a {@link RowChart} stand. Wide: label, grafts, marks, result side
 * by side. Narrow: words above the marks. Labels too long for one line take two.
 */
final class RowLayout {

  private static final double COLUMN_GAP = 14;
  private static final double MOST_FOR_LABELS = 0.3;
  private static final double MOST_FOR_END = 0.27;
  private static final double WORD_GAP = 10;
  private static final double LANE = 27;
  private static final double NARROW_LANE = 20;
  private static final double TEXT_LINE = 18;
  private static final double NARROW_GAP = 8;

  private final boolean narrow;
  private final String countHeading;
  private final double left;
  private final double right;
  private final double labelRoom;
  private final double countRoom;
  private final double endRoom;
  private final boolean twoLines;

  RowLayout(Sheet sheet, List<Line> lines, String countHeading) {
    this.narrow = sheet.size().narrow();
    this.countHeading = countHeading;
    this.left = sheet.left();
    this.right = sheet.right();
    List<Line.Caption> captions =
        lines.stream()
            .filter(Line.Row.class::isInstance)
            .map(line -> ((Line.Row) line).caption())
            .toList();
    double widestLabel = widest(captions, Lettering.STRONG, Line.Caption::label);
    double heading = captions.isEmpty() ? 0 : Lettering.QUIET.width(countHeading);
    countRoom = Math.max(heading, widest(captions, Lettering.QUIET, this::count));
    double widestEnd = widest(captions, Lettering.STRONG, Line.Caption::end);
    double whole = right - left;
    if (narrow) {
      endRoom = Math.min(widestEnd, whole);
      labelRoom = whole;
      twoLines = captions.stream().anyMatch(caption -> !fitsOneLine(caption));
    } else {
      endRoom = Math.min(widestEnd, whole * MOST_FOR_END);
      labelRoom = Math.min(widestLabel, whole * MOST_FOR_LABELS);
      twoLines = widestLabel > labelRoom;
    }
  }

  private static double widest(
      List<Line.Caption> captions, Lettering lettering, Function<Line.Caption, String> words) {
    return captions.stream().mapToDouble(c -> lettering.width(words.apply(c))).max().orElse(0);
  }

  private boolean fitsOneLine(Line.Caption caption) {
    return Lettering.STRONG.width(caption.label())
            + Lettering.QUIET.width(count(caption))
            + Lettering.STRONG.width(caption.end())
            + 2 * WORD_GAP
        <= right - left;
  }

  /** The count as written: with its heading where there is no column to carry it. */
  String count(Line.Caption caption) {
    return narrow && !countHeading.isEmpty() && !caption.count().isEmpty()
        ? countHeading + ": " + caption.count()
        : caption.count();
  }

  boolean narrow() {
    return narrow;
  }

  double rowHeight() {
    if (narrow) {
      return (twoLines ? 2 : 1) * TEXT_LINE + NARROW_LANE + NARROW_GAP;
    }
    return twoLines ? LANE + TEXT_LINE - 4 : LANE;
  }

  /** Height of the marks below the top of a row. */
  double laneMiddle() {
    return narrow ? rowHeight() - NARROW_GAP - NARROW_LANE / 2 : rowHeight() / 2;
  }

  double laneHalf() {
    return narrow ? NARROW_LANE / 2 : rowHeight() / 2;
  }

  double plotLeft() {
    return narrow ? left : countRight() + COLUMN_GAP;
  }

  double plotRight() {
    return narrow || endRoom == 0 ? right : right - endRoom - COLUMN_GAP;
  }

  double countRight() {
    return left + labelRoom + (countRoom > 0 ? COLUMN_GAP + countRoom : 0);
  }

  /** Adds label, count and result of a row whose top is at {@code y}. */
  void write(SvgElement group, Line.Row row, double y) {
    Lettering lettering = row.highlighted() ? Lettering.HIGHLIGHT : Lettering.BODY;
    if (narrow) {
      writeAbove(group, row.caption(), lettering, y);
    } else {
      writeBeside(group, row.caption(), lettering, y + laneMiddle() + 4.5);
    }
  }

  private void writeAbove(SvgElement group, Line.Caption caption, Lettering lettering, double y) {
    double first = y + TEXT_LINE - 3;
    double second = twoLines ? first + TEXT_LINE : first;
    String label = lettering.fit(caption.label(), labelRoom);
    double countX = twoLines ? left : left + lettering.width(label) + WORD_GAP;
    group.add(
        lettering.at(left, first, label),
        Lettering.QUIET.at(countX, second, count(caption)),
        lettering.at(right, second, Lettering.Anchor.END, lettering.fit(caption.end(), endRoom)));
  }

  private void writeBeside(
      SvgElement group, Line.Caption caption, Lettering lettering, double baseline) {
    List<String> label = lettering.wrap(caption.label(), labelRoom);
    if (label.size() == 1) {
      group.add(lettering.at(left, baseline, label.get(0)));
    } else {
      String rest = String.join(" ", label.subList(1, label.size()));
      group.add(
          lettering.at(left, baseline - TEXT_LINE / 2, label.get(0)),
          lettering.at(left, baseline + TEXT_LINE / 2 - 1, lettering.fit(rest, labelRoom)));
    }
    group.add(
        Lettering.QUIET.at(countRight(), baseline, Lettering.Anchor.END, count(caption)),
        lettering.at(plotRight() + COLUMN_GAP, baseline, lettering.fit(caption.end(), endRoom)));
  }

  boolean hasCountColumn() {
    return !narrow && !countHeading.isEmpty();
  }

  /** Adds the heading of the count column, where there is such a column. */
  void writeHeading(Sheet sheet, double baseline) {
    if (hasCountColumn()) {
      sheet.add(Lettering.QUIET.at(countRight(), baseline, Lettering.Anchor.END, countHeading));
    }
  }
}
