package org.taketally.figure;

/**
 * The shapes that stand for an estimate. Each differs from the others in shape and in lightness, so
 * that colour is never needed to tell them apart.
 */
enum Mark {
  CIRCLE(Palette.LEAF, Palette.LEAF_SOFT),
  DIAMOND(Palette.STRAW, Palette.STRAW_SOFT),
  TRIANGLE(Palette.BARK, Palette.BARK_SOFT),
  SQUARE(Palette.BARK, Palette.BARK_SOFT),
  RING(Palette.STONE, Palette.STONE_SOFT),
  /**
   * A value as counted, beside an estimate: a tick, which no other mark can hide or be taken for.
   */
  COUNTED(Palette.INK, Palette.SOFT_INK),
  /** A value as counted where there is no estimate beside it: small and open. */
  POINT(Palette.SOFT_INK, Palette.SOFT_INK);

  private static final double RADIUS = 5.5;
  private static final double SMALL_RADIUS = 3.2;
  private static final double TICK = 9;
  private static final double TICK_WIDTH = 2;
  private static final double HALO = 1.6;
  private static final double OUTLINE = 2.2;
  private static final double THIN_OUTLINE = 1.4;

  private final String solid;
  private final String soft;

  Mark(String solid, String soft) {
    this.solid = solid;
    this.soft = soft;
  }

  /** Colour of the mark. */
  String solid() {
    return solid;
  }

  /** Colour of the interval behind it. */
  String soft() {
    return soft;
  }

  SvgElement at(double x, double y) {
    return switch (this) {
      case CIRCLE ->
          circle(x, y, RADIUS)
              .with("fill", solid)
              .with("stroke", Palette.PAPER)
              .with("stroke-width", HALO);
      case DIAMOND -> filled(corners(x, y, RADIUS * 1.2, 0));
      case SQUARE -> filled(corners(x, y, RADIUS * 1.3, Math.PI / 4));
      case TRIANGLE -> filled(triangle(x, y, RADIUS * 1.25));
      case RING -> open(circle(x, y, RADIUS - 1), OUTLINE);
      case COUNTED -> tick(x, y);
      case POINT -> open(circle(x, y, SMALL_RADIUS), THIN_OUTLINE);
    };
  }

  /** The interval behind the mark: a bar with round ends. */
  SvgElement interval(double fromX, double toX, double y, double thickness) {
    return SvgElement.line(fromX, y, toX, y)
        .with("stroke", soft)
        .with("stroke-width", thickness)
        .with("stroke-linecap", "round");
  }

  /** Taller than any other mark, with a halo, so that it shows above and below them. */
  private SvgElement tick(double x, double y) {
    SvgElement halo =
        SvgElement.line(x, y - TICK, x, y + TICK)
            .with("stroke", Palette.PAPER)
            .with("stroke-width", TICK_WIDTH + HALO);
    SvgElement stroke =
        SvgElement.line(x, y - TICK, x, y + TICK)
            .with("stroke", solid)
            .with("stroke-width", TICK_WIDTH);
    return SvgElement.of("g").add(halo, stroke);
  }

  private static SvgElement circle(double x, double y, double radius) {
    return SvgElement.of("circle").with("cx", x).with("cy", y).with("r", radius);
  }

  private SvgElement open(SvgElement shape, double outline) {
    return shape.with("fill", Palette.PAPER).with("stroke", solid).with("stroke-width", outline);
  }

  private SvgElement filled(String points) {
    return SvgElement.of("polygon")
        .with("points", points)
        .with("fill", solid)
        .with("stroke", Palette.PAPER)
        .with("stroke-width", HALO);
  }

  private static String corners(double x, double y, double radius, double turn) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < 4; i++) {
      double angle = turn + i * Math.PI / 2;
      point(points, x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    }
    return points.toString();
  }

  private static String triangle(double x, double y, double radius) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < 3; i++) {
      double angle = Math.PI / 2 + i * 2 * Math.PI / 3;
      point(points, x + radius * Math.cos(angle), y + radius * Math.sin(angle) - radius / 6);
    }
    return points.toString();
  }

  private static void point(StringBuilder points, double x, double y) {
    points.append(points.isEmpty() ? "" : " ").append(SvgElement.number(x)).append(',');
    points.append(SvgElement.number(y));
  }
}
