package org.taketally.model.laplace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The cells in the order of elimination, equal ones merged, with the places of their levels: the
 * part of the engine's work that depends on neither takes, standard deviations nor effects.
 */
public final class SortedCells {

  /** Cells below which one piece of work is quickest. */
  private static final int SMALL = 4096;

  /** Levels of the dense remainder beyond which memory ends: 3 matrices of 0.5 GB. */
  private static final int LARGEST_REST = 8000;

  public final Elimination elimination;
  public final Patterns patterns;

  /** Where each row of X isn't zero. */
  public final int[][] filled;

  /** Sorted cell of each cell of the evidence. */
  public final int[] placeOf;

  public final int cells;
  public final int[] grafts;
  public final int[] pattern;

  /** Columns in the chain. */
  public final int depths;

  /** Chain nodes at each depth, in sorted order: their level, and their parent one depth up. */
  public final int[][] levelOf;

  public final int[][] parent;

  /** Nodes of depth 0 whose cells have no deviation of the finest column. */
  public final boolean[] exempt;

  /** Cells of a node of depth 0: from start[node] to start[node + 1]. */
  public final int[] start;

  /** Levels of the remainder in all, and the first of each of its columns. */
  public final int rest;

  public final int[] restFrom;

  /** Remainder level of each cell, one array a column of the remainder. */
  public final int[][] restOf;

  /** Remainder levels met by each node of depth 0, ascending: met[metFrom[node]...]. */
  public final int[] metFrom;

  public final int[] met;

  /** Place in {@code met} of each cell's level, one array a column of the remainder. */
  public final int[][] metAt;

  /** Nodes of depth 0 in each piece of work: whole top nodes. */
  public final int[] pieceFrom;

  public SortedCells(ModelData evidence) {
    this.elimination = Elimination.of(evidence);
    this.patterns = evidence.patterns();
    this.filled = patterns.filled();
    List<int[]> chain = new ArrayList<>();
    elimination.chain().forEach(k -> chain.add(evidence.codes()[k]));
    if (chain.isEmpty()) {
      chain.add(new int[evidence.cells()]);
    }
    this.depths = chain.size();
    List<int[]> others = elimination.rest().stream().map(k -> evidence.codes()[k]).toList();
    this.restFrom = new int[others.size() + 1];
    for (int f = 0; f < others.size(); f++) {
      restFrom[f + 1] = restFrom[f] + evidence.sizes()[elimination.rest().get(f)];
    }
    this.rest = restFrom[others.size()];
    refuseTooLarge();
    List<int[]> keys = new ArrayList<>();
    keys.add(evidence.patterns().codes());
    keys.addAll(others);
    keys.addAll(chain);
    int[] order = order(keys, evidence.cells());
    this.placeOf = new int[order.length];
    this.cells = merge(order, keys);
    this.grafts = sums(evidence.grafts());
    this.pattern = spread(evidence.patterns().codes(), 0);
    this.restOf = new int[others.size()][];
    for (int f = 0; f < restOf.length; f++) {
      restOf[f] = spread(others.get(f), restFrom[f]);
    }
    this.levelOf = new int[depths][];
    this.parent = new int[depths][];
    this.start = nodes(chain);
    this.exempt = exempt(evidence);
    this.metFrom = new int[levelOf[0].length + 1];
    this.metAt = new int[restOf.length][cells];
    this.met = findMet();
    this.pieceFrom = pieces();
  }

  private void refuseTooLarge() {
    if (rest > LARGEST_REST) {
      throw new TooManyLevels(rest, LARGEST_REST);
    }
  }

  /** Stable counting sorts from the least to the most telling key. */
  private static int[] order(List<int[]> keys, int cells) {
    int[] order = new int[cells];
    Arrays.setAll(order, i -> i);
    int[] other = new int[cells];
    for (int[] key : keys) {
      int[] count = new int[Arrays.stream(key).max().orElse(0) + 2];
      for (int code : key) {
        count[code + 1]++;
      }
      for (int c = 1; c < count.length; c++) {
        count[c] += count[c - 1];
      }
      for (int i : order) {
        other[count[key[i]]++] = i;
      }
      int[] swap = order;
      order = other;
      other = swap;
    }
    return order;
  }

  private int merge(int[] order, List<int[]> keys) {
    int place = -1;
    for (int i = 0; i < order.length; i++) {
      if (i == 0 || differ(order[i - 1], order[i], keys)) {
        place++;
      }
      placeOf[order[i]] = place;
    }
    return place + 1;
  }

  private static boolean differ(int i, int j, List<int[]> keys) {
    for (int[] key : keys) {
      if (key[i] != key[j]) {
        return true;
      }
    }
    return false;
  }

  /** Sums over merged cells. */
  public int[] sums(int[] values) {
    int[] sums = new int[cells];
    for (int i = 0; i < values.length; i++) {
      sums[placeOf[i]] += values[i];
    }
    return sums;
  }

  private int[] spread(int[] codes, int offset) {
    int[] sorted = new int[cells];
    for (int i = 0; i < codes.length; i++) {
      sorted[placeOf[i]] = offset + codes[i];
    }
    return sorted;
  }

  private boolean[] exempt(ModelData evidence) {
    boolean[] exempt = new boolean[levelOf[0].length];
    int level =
        elimination.chain().isEmpty()
            ? ModelData.NONE
            : evidence.exempt()[elimination.chain().get(0)];
    for (int node = 0; node < exempt.length; node++) {
      exempt[node] = levelOf[0][node] == level;
    }
    return exempt;
  }

  /** Nodes end where a level does, and where the level above does: those exempt span several. */
  private int[] nodes(List<int[]> chain) {
    int[] up = chain.size() > 1 ? spread(chain.get(1), 0) : new int[cells];
    int[] below = new int[cells + 1];
    Arrays.setAll(below, i -> i);
    int[] starts = below;
    int[] firstStarts = null;
    for (int d = 0; d < depths; d++) {
      int[] codes = spread(chain.get(d), 0);
      int count = starts.length - 1;
      int[] nodeOf = new int[count];
      int[] levels = new int[count];
      int[] nodeStarts = new int[count + 1];
      int nodes = 0;
      for (int i = 0; i < count; i++) {
        int code = codes[starts[i]];
        if (i == 0
            || code != codes[starts[i - 1]]
            || (d == 0 && up[starts[i]] != up[starts[i - 1]])) {
          nodeStarts[nodes] = starts[i];
          levels[nodes++] = code;
        }
        nodeOf[i] = nodes - 1;
      }
      nodeStarts[nodes] = cells;
      levelOf[d] = Arrays.copyOf(levels, nodes);
      if (d > 0) {
        parent[d - 1] = nodeOf;
      }
      starts = Arrays.copyOf(nodeStarts, nodes + 1);
      if (d == 0) {
        firstStarts = starts;
      }
    }
    return firstStarts;
  }

  private int[] findMet() {
    int[] seen = new int[rest];
    int[] place = new int[rest];
    int[] found = new int[1024];
    int size = 0;
    for (int node = 0; node + 1 < start.length; node++) {
      metFrom[node] = size;
      int from = size;
      for (int[] levels : restOf) {
        for (int i = start[node]; i < start[node + 1]; i++) {
          if (seen[levels[i]] != node + 1) {
            seen[levels[i]] = node + 1;
            if (size == found.length) {
              found = Arrays.copyOf(found, 2 * size);
            }
            found[size++] = levels[i];
          }
        }
      }
      Arrays.sort(found, from, size);
      for (int at = from; at < size; at++) {
        place[found[at]] = at;
      }
      for (int f = 0; f < restOf.length; f++) {
        for (int i = start[node]; i < start[node + 1]; i++) {
          metAt[f][i] = place[restOf[f][i]];
        }
      }
    }
    metFrom[start.length - 1] = size;
    return Arrays.copyOf(found, size);
  }

  /** About equal pieces; fewer when the remainder is large, because each needs its own matrix. */
  private int[] pieces() {
    int nodes = start.length - 1;
    long matrix = (long) rest * rest + 1;
    int wanted = cells < SMALL ? 1 : (int) Math.max(2, Math.min(8, 25_000_000 / matrix));
    List<Integer> from = new ArrayList<>(List.of(0));
    for (int node = 1; node < nodes; node++) {
      boolean newTop = top(node) != top(node - 1);
      if (newTop && start[node] >= (long) cells * from.size() / wanted) {
        from.add(node);
      }
    }
    from.add(nodes);
    return from.stream().mapToInt(Integer::intValue).toArray();
  }

  /** The top node of the chain above a node of depth 0. */
  public int top(int node) {
    int at = node;
    for (int d = 0; d + 1 < depths; d++) {
      at = parent[d][at];
    }
    return at;
  }

  public int pieceCount() {
    return pieceFrom.length - 1;
  }
}
