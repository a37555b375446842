package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.counts.BlockTakes.BlockTake;
import org.taketally.answers.counts.BlockTakes.SiteBlocks;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** Takes by block within site, as counted. */
final class BlockTakesFigure {

  private BlockTakesFigure() {}

  static String draw(BlockTakes answer, FigureSize size) {
    String subtitle =
        "As counted, nothing adjusted; " + Words.count(answer.tally().grafts(), "graft");
    String title = "Takes by block within site";
    Sheet sheet = new Sheet(size, title, subtitle, subtitle + ". " + Wording.of(answer).headline());
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, "counted take"),
            KeyEntry.interval(Mark.CIRCLE, 6, "likely range")));
    List<Line> rows = new ArrayList<>();
    for (SiteBlocks site : answer.sites()) {
      site.blocks().forEach(block -> rows.add(row(site.site(), block)));
    }
    Axis axis = new Axis(0, 1, "grafts that took, in 100", Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, "blocks"), axis, "grafts");
    return sheet.svg();
  }

  private static Line row(String site, BlockTake block) {
    Estimate take = new Estimate(block.tally().rate(), block.counted());
    String label = site + ", " + block.block();
    Line.Caption caption =
        new Line.Caption(
            label,
            Words.count(block.tally().grafts()),
            Words.percent(take.value()),
            label + ": " + Words.take(take));
    return Line.Row.of(caption, Mark.CIRCLE, take);
  }
}
