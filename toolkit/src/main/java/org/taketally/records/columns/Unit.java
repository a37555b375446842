package org.taketally.records.columns;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Units a dictionary may name, and what they come to in ours. */
public enum Unit {
  CELSIUS("°C", Set.of("c", "°c", "deg c", "celsius"), 0, 1),
  FAHRENHEIT("°C", Set.of("f", "°f", "deg f", "fahrenheit"), 32, 5 / 9.0),
  MILLIMETRE("mm", Set.of("mm"), 0, 1),
  CENTIMETRE("mm", Set.of("cm"), 0, 10),
  INCH("mm", Set.of("in", "inch", "inches", "\"", "″"), 0, 25.4),
  PERCENT("grafts", Set.of("%", "percent"), 0, 1),
  SHARE("grafts", Set.of("share"), 0, 100),
  DAY(
      "days",
      Set.of(
          "d", "day", "days", "t", "tg", "tag", "tage", "tagen", "j", "jour", "jours", "día",
          "días", "dia", "dias", "gg", "giorno", "giorni"),
      0,
      1),
  WEEK(
      "days",
      Set.of(
          "w",
          "wk",
          "wks",
          "week",
          "weeks",
          "woche",
          "wochen",
          "semaine",
          "semaines",
          "semana",
          "semanas",
          "settimana",
          "settimane"),
      0,
      7);

  private final String ours;

  @SuppressWarnings("ImmutableEnumChecker") // made by Set.of
  private final Set<String> names;

  private final double zero;
  private final double size;

  Unit(String ours, Set<String> names, double zero, double size) {
    this.ours = ours;
    this.names = names;
    this.zero = zero;
    this.size = size;
  }

  /** The value in our unit. */
  public double toOurs(double value) {
    return (value - zero) * size;
  }

  /** The unit of that name, if numbers of the column can be in it. */
  public static Optional<Unit> of(ColumnRule rule, String name) {
    for (Unit unit : values()) {
      boolean fits = (unit != PERCENT && unit != SHARE) || isTakes(rule);
      if (fits
          && unit.ours.equals(rule.unit())
          && unit.names.contains(withoutDot(name).toLowerCase(Locale.ROOT))) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /** A unit cut short may end with a dot: "12 in.", "3 wks.". */
  private static String withoutDot(String name) {
    return name.endsWith(".") ? name.substring(0, name.length() - 1) : name;
  }

  private static boolean isTakes(ColumnRule rule) {
    return rule.name().equals(RecordColumn.TAKES.columnName());
  }

  public static String choices(ColumnRule rule) {
    return switch (rule.unit()) {
      case "°C" -> "\"C\" or \"F\"";
      case "mm" -> "\"mm\", \"cm\" or \"inch\"";
      case "grafts" -> isTakes(rule) ? "\"percent\" or \"share\"" : "no unit";
      case "days" -> "\"days\" or \"weeks\"";
      default -> "no unit";
    };
  }
}
