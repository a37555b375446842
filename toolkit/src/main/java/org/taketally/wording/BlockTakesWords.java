package org.taketally.wording;

import java.util.List;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.counts.BlockTakes.BlockTake;
import org.taketally.answers.counts.BlockTakes.SiteBlocks;

/** Takes by block within site, in words. */
final class BlockTakesWords implements AnswerWords {

  private final BlockTakes answer;

  BlockTakesWords(BlockTakes answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    SiteBlocks site = answer.widest();
    BlockTake last = site.blocks().get(site.blocks().size() - 1);
    String found =
        last.fromBest().high() < 0
            ? "As counted, block %s at %s takes about %s worse than block %s (likely %s)"
            : "No block is shown to take worse than another of its site; furthest apart are blocks"
                + " %s and %4$s at %s, %s as counted (likely %5$s)";
    return "%s; from %s in %s."
        .formatted(
            found.formatted(
                last.block(),
                site.site(),
                Words.points(-last.fromBest().value()),
                site.best().block(),
                Words.below(last.fromBest().interval())),
            Words.count(answer.tally().grafts(), "graft"),
            Words.count(blocks(), "block"));
  }

  private long blocks() {
    return answer.sites().stream().mapToLong(site -> site.blocks().size()).sum();
  }

  @Override
  public List<String> more() {
    return List.of(
        "Counts as they stand, nothing adjusted: blocks can differ because their cultivars, hands"
            + " or days do. The model allows for blocks on its own.",
        "Among many blocks one is always last, so the ranges of differences are wide enough to hold"
            + " for %s at once."
                .formatted(answer.pairs() == 1 ? "the pair" : "all %s pairs".formatted(pairs())));
  }

  private String pairs() {
    return Words.count(answer.pairs());
  }

  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "block-takes",
            "Blocks of each site, highest counted take first",
            AnswerColumn.SITE,
            AnswerColumn.BLOCK,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH);
    for (SiteBlocks site : answer.sites()) {
      for (BlockTake block : site.blocks()) {
        table.row(site.site(), block.block(), block.tally(), block.counted(), block.fromBest());
      }
    }
    return List.of(table.build());
  }
}
