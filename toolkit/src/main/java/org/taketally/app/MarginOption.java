package org.taketally.app;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** The difference that would change what one does, for every command that judges by it. */
final class MarginOption {

  private static final double POINTS = 100;

  @Option(
      names = "--margin",
      paramLabel = "POINTS",
      defaultValue = "10",
      converter = Points.class,
      description = "A difference smaller than this changes nothing you do (${DEFAULT-VALUE}).")
  private double points = 0.10; // also where nothing is typed, as in the demo

  /** As a fraction of 1. */
  double value() {
    return points;
  }

  /** Points as typed, e.g. 10, as a fraction. */
  static final class Points implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
      return TypedValues.number(typed)
          .filter(points -> points > 0 && points < POINTS)
          .map(points -> points / POINTS)
          .orElseThrow(() -> TypedValues.wrong(typed, "points between 0 and 100, e.g. 10"));
    }
  }
}
