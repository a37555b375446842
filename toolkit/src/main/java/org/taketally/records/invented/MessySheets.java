package org.taketally.records.invented;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.PlantedFaults.Fault;

/**
 * The avocado sheets as four volunteers keep them: each season in other words, units and
 * separators. Nothing in them is wrong, apart from a line of totals, until {@link PlantedFaults}
 * are added.
 */
final class MessySheets {

  private static final Map<String, List<String>> SPELLINGS =
      Map.ofEntries(
          Map.entry("Corvane", List.of("Corvane", "corvane", "Corv.")),
          Map.entry("Larkmoor", List.of("Larkmoor", "Lark Moor")),
          Map.entry("Dunsober", List.of("Dunsober", "DUNSOBER")),
          Map.entry("Quillon", List.of("Quillon", "Quilon")),
          Map.entry("Jessoway", List.of("Jessoway", "Jessaway")),
          Map.entry("Halden seedling", List.of("Halden seedling", "Halden sdlg", "Halden")),
          Map.entry("Quarry seedling", List.of("Quarry seedling", "Quarry")),
          Map.entry("Old Orchard seedling", List.of("Old Orchard seedling", "O.O. seedling")),
          Map.entry("cleft", List.of("cleft", "Cleft", "wedge")),
          Map.entry("side-veneer", List.of("side-veneer", "side veneer", "veneer")),
          Map.entry("whip-and-tongue", List.of("whip-and-tongue", "whip + tongue", "w+t")));

  private MessySheets() {}

  /** File name to text of the sheets, without the planted faults if {@code faults} is empty. */
  static Map<String, String> files(Map<String, String> clean, List<Fault> faults) {
    Map<String, TextSheet> sheets = sheets(clean);
    faults.forEach(fault -> fault.plantIn(sheets.get(fault.file()), separator(fault.file())));
    Map<String, String> files = new LinkedHashMap<>();
    sheets.forEach((file, sheet) -> files.put(file, mark(file) + sheet.text(separator(file))));
    return files;
  }

  private static Map<String, TextSheet> sheets(Map<String, String> clean) {
    Map<String, TextSheet> sheets = new LinkedHashMap<>();
    sheets.put("sheet-2022.csv", semicolons(sheet(clean, "grafts-2022.csv")));
    sheets.put("sheet-2023.csv", fahrenheit(sheet(clean, "grafts-2023.csv")));
    sheets.put("sheet-2024.csv", inches(sheet(clean, "grafts-2024.csv")));
    sheets.put("sheet-2025.csv", ourColumns(sheet(clean, "grafts-2025.csv")));
    return sheets;
  }

  private static TextSheet sheet(Map<String, String> clean, String file) {
    return TextSheet.parse(clean.get(file));
  }

  /** Spreadsheets often put a byte order mark before UTF-8. */
  private static String mark(String file) {
    return file.equals("sheet-2022.csv") ? "\uFEFF" : "";
  }

  private static char separator(String file) {
    return switch (file) {
      case "sheet-2022.csv" -> ';';
      case "sheet-2024.csv" -> '\t';
      default -> ',';
    };
  }

  /** Own headings, semicolons, decimal commas, days first with points. */
  private static TextSheet semicolons(TextSheet sheet) {
    return spell(sheet)
        .change("graft_date", MessySheets::dayFirst)
        .change("budwood_cut_date", MessySheets::dayFirst)
        .change("assessed_date", MessySheets::dayFirst)
        .change("storage_temp_c", value -> value.replace('.', ','))
        .change("budwood_kept", value -> value.equals("moist") ? "damp cloth" : "dry")
        .change("stock_condition", value -> value.equals("weak") ? "poor" : "good")
        .change("bud_stage", value -> value.equals("flushed") ? "in leaf" : value)
        .rename("record", "Label")
        .rename("season", "Year")
        .rename("grafter", "Who")
        .rename("cultivar", "Variety")
        .rename("rootstock", "Stock")
        .rename("method", "How")
        .rename("graft_date", "Grafted on")
        .rename("budwood_cut_date", "Wood cut on")
        .rename("storage_temp_c", "Cool box")
        .rename("budwood_kept", "Wrapped")
        .rename("bud_stage", "Buds")
        .rename("stock_condition", "Stock looks")
        .rename("assessed_date", "Counted on")
        .rename("grafts", "Made")
        .rename("takes", "Alive")
        .total("Total", List.of("Made", "Alive"));
  }

  /** Degrees Fahrenheit, days first with strokes, no season. */
  private static TextSheet fahrenheit(TextSheet sheet) {
    return spell(sheet)
        .drop("season")
        .change("graft_date", value -> dayFirst(value).replace('.', '/'))
        .change("budwood_cut_date", value -> dayFirst(value).replace('.', '/'))
        .change("assessed_date", value -> dayFirst(value).replace('.', '/'))
        .change("storage_temp_c", MessySheets::toFahrenheit)
        .rename("graft_date", "date grafted")
        .rename("budwood_cut_date", "date cut")
        .rename("assessed_date", "date counted")
        .rename("storage_temp_c", "fridge F");
  }

  /** Tabs, inches, yes and no. */
  private static TextSheet inches(TextSheet sheet) {
    return spell(sheet)
        .change("scion_diameter_mm", MessySheets::toInches)
        .change("stock_diameter_mm", MessySheets::toInches)
        .change("outcome", MessySheets::yesOrNo)
        .rename("scion_diameter_mm", "scion inch")
        .rename("stock_diameter_mm", "stock inch")
        .rename("outcome", "took?");
  }

  /** Our columns, with other cases and spaces in the headings. */
  private static TextSheet ourColumns(TextSheet sheet) {
    return spell(sheet)
        .rename("cultivar", "Cultivar")
        .rename("graft_date", "Graft date")
        .rename("bud_stage", "BUD_STAGE")
        .add("replaces");
  }

  private static TextSheet spell(TextSheet sheet) {
    return sheet
        .changeByLine("cultivar", MessySheets::spelt)
        .changeByLine("rootstock", MessySheets::spelt)
        .changeByLine("method", MessySheets::spelt);
  }

  private static String spelt(int line, String value) {
    List<String> ways = SPELLINGS.getOrDefault(value, List.of(value));
    return ways.get(line / 5 % ways.size());
  }

  private static String dayFirst(String iso) {
    String[] parts = iso.split("-", -1);
    return parts[2] + "." + parts[1] + "." + parts[0];
  }

  private static String toFahrenheit(String celsius) {
    return new BigDecimal(celsius)
        .multiply(new BigDecimal("1.8"))
        .add(new BigDecimal(32))
        .setScale(1, RoundingMode.UNNECESSARY)
        .toPlainString();
  }

  private static String toInches(String mm) {
    return new BigDecimal(mm)
        .divide(new BigDecimal("25.4"), 3, RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  private static String yesOrNo(String outcome) {
    return switch (outcome) {
      case "taken" -> "yes";
      case "failed" -> "no";
      default -> "?";
    };
  }
}
