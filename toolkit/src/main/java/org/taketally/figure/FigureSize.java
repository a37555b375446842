package org.taketally.figure;

/** The shape a figure is laid out for; it scales from there to the room it is given. */
public enum FigureSize {
  /** A notebook, a desktop page, paper. */
  WIDE(720),
  /** A telephone held upright: labels stand above their marks. */
  NARROW(380);

  private final int width;

  FigureSize(int width) {
    this.width = width;
  }

  int width() {
    return width;
  }

  boolean narrow() {
    return this == NARROW;
  }
}
