package org.taketally.app;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Per cent as typed, e.g. 80, as a fraction. */
final class Percent implements ITypeConverter<Double> {

  private static final double ALL = 100;

  @Override
  public Double convert(String typed) {
    try {
      double percent = Double.parseDouble(typed.replace("%", "").strip());
      if (percent > 0 && percent < ALL && !(percent < 1)) {
        return percent / ALL;
      }
    } catch (NumberFormatException notANumber) {
      // Said below, with what was typed.
    }
    throw new TypeConversionException(
        "found \"%s\", expected per cent from 1 to under 100, e.g. 80".formatted(typed));
  }

  /** Per cent that may be none at all. */
  static final class OrNone implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
      return typed.replace("%", "").strip().matches("0+([.]0*)?")
          ? Double.valueOf(0)
          : new Percent().convert(typed);
    }
  }
}
