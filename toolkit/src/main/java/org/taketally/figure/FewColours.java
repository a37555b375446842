package org.taketally.figure;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A picture of at most 256 colours. A figure has few, and as many more as smooth edges need; with
 * one byte a dot its file is a third as long.
 */
final class FewColours {

  private static final int MOST = 256;

  /** Shades of a channel told apart: 5 of 8 bits. */
  private static final int KEPT_BITS = 0xf8f8f8;

  private FewColours() {}

  static BufferedImage of(BufferedImage image) {
    int width = image.getWidth();
    int height = image.getHeight();
    int[] dots = image.getRGB(0, 0, width, height, null, 0, width);
    Map<Integer, Integer> exact = new HashMap<>();
    Map<Integer, Map<Integer, Integer>> shades = new HashMap<>();
    for (int from = 0; from < dots.length; from = runEnd(dots, from)) {
      exact.merge(dots[from] & 0xffffff, runEnd(dots, from) - from, Integer::sum);
    }
    exact.forEach(
        (colour, count) ->
            shades.computeIfAbsent(colour & KEPT_BITS, key -> new HashMap<>()).put(colour, count));
    List<Integer> palette = palette(shades);
    Map<Integer, Byte> places = new HashMap<>();
    byte[] indexed = new byte[dots.length];
    for (int from = 0; from < dots.length; from = runEnd(dots, from)) {
      Arrays.fill(
          indexed,
          from,
          runEnd(dots, from),
          places.computeIfAbsent(dots[from] & 0xffffff, colour -> (byte) nearest(colour, palette)));
    }
    BufferedImage few =
        new BufferedImage(width, height, BufferedImage.TYPE_BYTE_INDEXED, model(palette));
    few.getRaster().setDataElements(0, 0, width, height, indexed);
    return few;
  }

  /** Most dots have their neighbour's colour: where a run of one colour ends. */
  private static int runEnd(int[] dots, int from) {
    int end = from + 1;
    while (end < dots.length && dots[end] == dots[from]) {
      end++;
    }
    return end;
  }

  /** The commonest shades, each by its commonest colour, so that flat areas keep theirs. */
  private static List<Integer> palette(Map<Integer, Map<Integer, Integer>> shades) {
    return shades.values().stream()
        .sorted((a, b) -> Integer.compare(sum(b), sum(a)))
        .limit(MOST)
        .map(FewColours::commonest)
        .toList();
  }

  private static int sum(Map<Integer, Integer> counts) {
    return counts.values().stream().mapToInt(Integer::intValue).sum();
  }

  private static int commonest(Map<Integer, Integer> counts) {
    return counts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  private static int nearest(int colour, List<Integer> palette) {
    int nearest = 0;
    int least = Integer.MAX_VALUE;
    for (int i = 0; i < palette.size(); i++) {
      int distance = distance(colour, palette.get(i));
      if (distance < least) {
        least = distance;
        nearest = i;
      }
    }
    return nearest;
  }

  private static int distance(int a, int b) {
    int red = (a >> 16) - (b >> 16);
    int green = (a >> 8 & 0xff) - (b >> 8 & 0xff);
    int blue = (a & 0xff) - (b & 0xff);
    return red * red + green * green + blue * blue;
  }

  private static IndexColorModel model(List<Integer> palette) {
    int[] colours = palette.stream().mapToInt(Integer::intValue).toArray();
    return new IndexColorModel(8, colours.length, colours, 0, false, -1, 0);
  }
}
