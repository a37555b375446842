package org.taketally.app;

import java.util.Optional;
import picocli.CommandLine.ITypeConverter;

/** Per cent as typed, e.g. 80, as a fraction. */
final class Percent implements ITypeConverter<Double> {

  private static final double ALL = 100;

  @Override
  public Double convert(String typed) {
    return percent(typed)
        .orElseThrow(() -> TypedValues.wrong(typed, "per cent from 1 to under 100, e.g. 80"));
  }

  private static Optional<Double> percent(String typed) {
    return TypedValues.number(typed.replace("%", ""))
        .filter(percent -> percent >= 1 && percent < ALL)
        .map(percent -> percent / ALL);
  }

  /** Per cent that may be none at all. */
  static final class OrNone implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
      return typed.replace("%", "").strip().matches("0+([.]0*)?")
          ? Double.valueOf(0)
          : percent(typed)
              .orElseThrow(
                  () -> TypedValues.wrong(typed, "0, or per cent from 1 to under 100, e.g. 10"));
    }
  }
}
