package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.counts.BlockTakes.BlockTake;
import org.taketally.answers.counts.BlockTakes.SiteBlocks;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;
import org.taketally.wording.figures.BlockTakesFigureWords;
import org.taketally.wording.figures.FigureWords;

/** Takes by block within site, as counted. */
final class BlockTakesFigure {

  private BlockTakesFigure() {}

  static String draw(BlockTakes answer, FigureSize size) {
    BlockTakesFigureWords words = new BlockTakesFigureWords(answer);
    Sheet sheet =
        new Sheet(size, BlockTakesFigureWords.TITLE, words.subtitle(), words.description());
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, BlockTakesFigureWords.COUNTED),
            KeyEntry.interval(Mark.CIRCLE, 6, FigureWords.LIKELY)));
    List<Line> rows = new ArrayList<>();
    for (SiteBlocks site : answer.sites()) {
      site.blocks().forEach(block -> rows.add(row(site.site(), block, words)));
    }
    Axis axis = new Axis(0, 1, BlockTakesFigureWords.AXIS, Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, FigureWords.GRAFTS);
    return sheet.svg();
  }

  private static Line row(String site, BlockTake block, BlockTakesFigureWords words) {
    Estimate take = new Estimate(block.tally().rate(), block.counted());
    String label = site + ", " + block.block();
    Line.Caption caption =
        new Line.Caption(
            label,
            Words.count(block.tally().grafts()),
            Words.percent(take.value()),
            words.detail(label, take));
    return Line.Row.of(caption, Mark.CIRCLE, take);
  }
}
