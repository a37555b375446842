package org.taketally.plan.layout;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Looks for the blocks in which the worst pair of treatments is compared best, and among those the
 * best on average: cyclic and alpha starts where they exist (John and Williams 1995; Patterson and
 * Williams 1976) and random ones, each improved by swaps of two plots.
 */
final class BlockSearch {

  /** Multiplications spent on one search; about a second. */
  private static final double WORK = 4e8;

  private static final int MOST_TRIES = 60_000;
  private static final int FEWEST_TRIES = 400;
  private static final int STARTS = 12;

  private final int[] replicates;
  private final int[] sizes;
  private final int blocksPerReplicate;
  private final Random random;

  /**
   * A search.
   *
   * @param replicates of each treatment, 1 or more
   * @param sizes of each block; together as many plots as replicates
   * @param blocksPerReplicate consecutive blocks that hold every treatment once; 0 if not asked for
   * @param seed the same seed gives the same blocks
   */
  BlockSearch(int[] replicates, int[] sizes, int blocksPerReplicate, long seed) {
    this.replicates = replicates.clone();
    this.sizes = sizes.clone();
    this.blocksPerReplicate = blocksPerReplicate;
    this.random = new Random(seed);
    if (Arrays.stream(replicates).sum() != Arrays.stream(sizes).sum()) {
      throw new IllegalArgumentException(
          "blocks hold %d plots, replicates need %d"
              .formatted(Arrays.stream(sizes).sum(), Arrays.stream(replicates).sum()));
    }
  }

  /** Blocks of treatment numbers. */
  int[][] best() {
    int t = replicates.length;
    if (Arrays.stream(sizes).allMatch(size -> size == t) && allReplicates(sizes.length)) {
      return IntStream.range(0, sizes.length)
          .mapToObj(b -> IntStream.range(0, t).toArray())
          .toArray(int[][]::new);
    }
    int tries =
        (int) Math.max(FEWEST_TRIES, Math.min(MOST_TRIES, WORK / ((double) t * t * t + 50)));
    int[][] best = null;
    PairEfficiency reached = new PairEfficiency(-1, -1);
    for (int start = 0; start < STARTS; start++) {
      int[][] blocks = start(start);
      PairEfficiency here = improve(blocks, tries / STARTS);
      if (here.betterThan(reached)) {
        reached = here;
        best = blocks;
      }
    }
    return best;
  }

  private boolean allReplicates(int count) {
    return Arrays.stream(replicates).allMatch(r -> r == count);
  }

  private int[][] start(int number) {
    if (blocksPerReplicate > 0) {
      return switch (number) {
        case 0 -> lattice();
        case 1, 3, 5 -> replicateByReplicate();
        default -> alpha(Turn.BY_LOT);
      };
    }
    int k = sizes[0];
    int t = replicates.length;
    boolean cyclic =
        Arrays.stream(sizes).allMatch(size -> size == k) && sizes.length % t == 0 && k < t;
    return cyclic && number % 2 == 0 ? cyclic(k) : spread();
  }

  /** Initial blocks developed by adding 1 to every treatment number, modulo their count. */
  private int[][] cyclic(int k) {
    int t = replicates.length;
    int[][] best = null;
    PairEfficiency reached = new PairEfficiency(-1, -1);
    for (int attempt = 0; attempt < 200; attempt++) {
      int[][] blocks = new int[sizes.length][];
      int[] first = new int[0];
      for (int b = 0; b < sizes.length; b++) {
        first = b % t == 0 ? Arrays.copyOf(permutation(t), k) : first;
        int step = b % t;
        blocks[b] = Arrays.stream(first).map(i -> (i + step) % t).toArray();
      }
      PairEfficiency here = PairEfficiency.of(blocks, t);
      if (here.betterThan(reached)) {
        reached = here;
        best = blocks;
      }
    }
    return best;
  }

  /** Where s is prime, turning row i of replicate r by i r makes any two blocks share little. */
  private int[][] lattice() {
    int s = blocksPerReplicate;
    int k = replicates.length / s;
    int[][] blocks = alpha(Turn.BY_ROW);
    boolean rowsToo = k == s && sizes.length == s * (s + 1);
    for (int j = 0; rowsToo && j < s; j++) {
      int row = j;
      blocks[s * s + j] = IntStream.range(0, s).map(i -> row * s + i).toArray();
    }
    return blocks;
  }

  private enum Turn {
    BY_LOT,
    BY_ROW
  }

  /** Row i of a replicate holds treatments i s to i s + s - 1, turned. */
  private int[][] alpha(Turn how) {
    int s = blocksPerReplicate;
    int k = replicates.length / s;
    int[][] blocks = new int[sizes.length][k];
    for (int r = 0; r < sizes.length / s; r++) {
      for (int i = 0; i < k; i++) {
        int turn = how == Turn.BY_ROW ? i * r % s : r == 0 ? 0 : random.nextInt(s);
        for (int j = 0; j < s; j++) {
          blocks[r * s + j][i] = i * s + (j + turn) % s;
        }
      }
    }
    return blocks;
  }

  private int[][] replicateByReplicate() {
    int[][] blocks = new int[sizes.length][];
    int[] order = {};
    int at = 0;
    for (int b = 0; b < sizes.length; b++) {
      if (b % blocksPerReplicate == 0) {
        order = permutation(replicates.length);
        at = 0;
      }
      blocks[b] = Arrays.copyOfRange(order, at, at + sizes[b]);
      at += sizes[b];
    }
    return blocks;
  }

  /** The most replicated treatments first, each to the roomiest blocks that lack it. */
  private int[][] spread() {
    int[] filled = new int[sizes.length];
    int[][] blocks = Arrays.stream(sizes).mapToObj(int[]::new).toArray(int[][]::new);
    int[] order =
        Arrays.stream(permutation(replicates.length))
            .boxed()
            .sorted((a, b) -> Integer.compare(replicates[b], replicates[a]))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int treatment : order) {
      boolean[] has = new boolean[sizes.length];
      for (int r = 0; r < replicates[treatment]; r++) {
        int b = roomiest(filled, has);
        has[b] = true;
        blocks[b][filled[b]++] = treatment;
      }
    }
    return blocks;
  }

  private int roomiest(int[] filled, boolean[] has) {
    int best = -1;
    double most = -1;
    for (int b = 0; b < sizes.length; b++) {
      int room = sizes[b] - filled[b];
      double score = room + random.nextDouble() - (has[b] ? 1e6 : 0);
      if (room > 0 && (best < 0 || score > most)) {
        best = b;
        most = score;
      }
    }
    return best;
  }

  private int[] permutation(int count) {
    int[] order = IntStream.range(0, count).toArray();
    for (int i = count - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int kept = order[i];
      order[i] = order[j];
      order[j] = kept;
    }
    return order;
  }

  /** Swaps two plots as long as that helps; equals are taken too, to walk on. */
  private PairEfficiency improve(int[][] blocks, int tries) {
    int t = replicates.length;
    PairEfficiency here = PairEfficiency.of(blocks, t);
    for (int attempt = 0; attempt < tries; attempt++) {
      int[] swap = swap(blocks);
      if (swap.length == 0) {
        continue;
      }
      exchange(blocks, swap);
      PairEfficiency after = PairEfficiency.of(blocks, t);
      if (here.betterThan(after)) {
        exchange(blocks, swap);
      } else {
        here = after;
      }
    }
    return here;
  }

  /** Two plots of different blocks, of the same replicate if asked for, that may change places. */
  private int[] swap(int[][] blocks) {
    int a = random.nextInt(blocks.length);
    int b =
        blocksPerReplicate > 0
            ? a / blocksPerReplicate * blocksPerReplicate + random.nextInt(blocksPerReplicate)
            : random.nextInt(blocks.length);
    if (a == b || blocks[a].length == 0 || blocks[b].length == 0) {
      return new int[0];
    }
    int i = random.nextInt(blocks[a].length);
    int j = random.nextInt(blocks[b].length);
    boolean pointless = blocks[a][i] == blocks[b][j];
    return pointless || makesTwins(blocks, a, blocks[b][j]) || makesTwins(blocks, b, blocks[a][i])
        ? new int[0]
        : new int[] {a, i, b, j};
  }

  private static boolean makesTwins(int[][] blocks, int block, int treatment) {
    return Arrays.stream(blocks[block]).anyMatch(other -> other == treatment);
  }

  private static void exchange(int[][] blocks, int[] swap) {
    int kept = blocks[swap[0]][swap[1]];
    blocks[swap[0]][swap[1]] = blocks[swap[2]][swap[3]];
    blocks[swap[2]][swap[3]] = kept;
  }
}
