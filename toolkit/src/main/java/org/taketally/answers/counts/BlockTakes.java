package org.taketally.answers.counts;

import java.util.Comparator;
import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.terms.Interval;

/**
 * Counted takes of the blocks within each site: whether a corner of the nursery does worse. Nothing
 * is adjusted, so blocks can differ because their cultivars, hands or days do.
 *
 * @param sites only sites with two assessed blocks or more, by name; at least one
 * @param pairs pairs of blocks of one site, among which the largest difference was looked for
 * @param coverage of the likely ranges, strictly between 0 and 1; differences cover all pairs at
 *     once
 */
public record BlockTakes(List<SiteBlocks> sites, int pairs, double coverage) implements Answer {

  public BlockTakes {
    sites = List.copyOf(sites);
    if (sites.isEmpty()) {
      throw new IllegalArgumentException(
          "takes by block need a site with two blocks or more, got none");
    }
  }

  /**
   * One site.
   *
   * @param site its name
   * @param blocks highest counted take first, at least two
   */
  public record SiteBlocks(String site, List<BlockTake> blocks) {

    public SiteBlocks {
      blocks = List.copyOf(blocks);
      if (blocks.size() < 2) {
        throw new IllegalArgumentException(
            "site %s needs two blocks or more, got %d".formatted(site, blocks.size()));
      }
    }

    /**
     * The block all others of the site are compared with.
     *
     * @return the one with the highest counted take
     */
    public BlockTake best() {
      return blocks.get(0);
    }
  }

  /**
   * One block.
   *
   * @param block its name within the site
   * @param tally its grafts, one or more, and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param fromBest counted take minus that of the site's best block, -1 to 0, with Newcombe's
   *     interval; 0 with a range of one point for the best itself
   */
  public record BlockTake(String block, TakeCount tally, Interval counted, Estimate fromBest) {}

  /**
   * The site with the largest counted difference between two of its blocks.
   *
   * @return one of the sites
   */
  public SiteBlocks widest() {
    return sites.stream().min(Comparator.comparingDouble(site -> last(site).value())).orElseThrow();
  }

  private static Estimate last(SiteBlocks site) {
    return site.blocks().get(site.blocks().size() - 1).fromBest();
  }

  /**
   * All grafts behind it.
   *
   * @return grafts and takes of all blocks listed
   */
  public TakeCount tally() {
    return sites.stream()
        .flatMap(site -> site.blocks().stream())
        .map(BlockTake::tally)
        .reduce(new TakeCount(0, 0), TakeCount::plus);
  }

  @Override
  public Question question() {
    return Question.BLOCKS;
  }
}
