package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.cells.CellsOf;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Whatever is done to a sheet, rows read are rows kept plus rows set aside. */
class NothingIsLostTest {

  private static final Path SHEET =
      Path.of(
          System.getProperty("taketally.root", ".."),
          "datasets/halden-bay-avocado/grafts-2025.csv");
  private static final String[] SPLINTERS = {
    "", ",", ";", "\"", "\n", "NA", "-1", "3,5", "1e9", "31.02.2025", "é", "\u0000", "taken", "  "
  };
  private static final int SHEETS = 150;

  @TempDir private Path folder;

  @Test
  void rows_reconcile_on_damaged_sheets() throws IOException {
    List<String> lines = Files.readAllLines(SHEET).subList(0, 60);
    int understood = 0;
    for (int seed = 0; seed < SHEETS; seed++) {
      Path file = folder.resolve("damaged-" + seed + ".csv");
      Files.writeString(file, damaged(lines, new Random(seed)));
      try {
        GraftRecords records =
            RecordsReader.defaults().withToday(LocalDate.of(2026, 11, 25)).read(List.of(file));
        understood++;
        assertThat(records.provenance().rowsKept())
            .as("seed %d", seed)
            .isEqualTo(records.frame().rowCount());
        assertThat(records.setAside().size())
            .as("seed %d", seed)
            .isEqualTo((int) records.provenance().rowsSetAside());
        assertThat(CellsOf.records(records, List.of("cultivar", "rootstock")).graftsTotal())
            .as("seed %d", seed)
            .isEqualTo(records.grafts());
        assertThat(records.setAside().rows()).allMatch(row -> !row.reasons().isEmpty());
      } catch (RecordsUnreadable refused) {
        Problem why = refused.problem();
        assertThat(why.severity()).isEqualTo(Severity.ERROR);
        assertThat(why.expected() + why.remedy()).isNotBlank();
      }
    }
    assertThat(understood).isGreaterThan(SHEETS / 3);
  }

  /** Rows that were set aside and then corrected are read like any other. */
  @Test
  void repaired_rows_are_read_again() throws IOException {
    Path sheet = folder.resolve("sheet.csv");
    Files.writeString(
        sheet, "cultivar,rootstock,grafts,takes\nOrrin,Pellin,10,14\nOrrin,Pellin,10,4\n");
    GraftRecords first = RecordsReader.defaults().read(List.of(sheet));
    assertThat(first.provenance().rowsSetAside()).isEqualTo(1);
    assertThat(first.problems().get(0).sentence())
        .contains("sheet.csv line 2, column takes: found \"14\"")
        .contains("expected a whole number from 0 to 10 (grafts)");
    Path repaired = folder.resolve("set-aside.csv");
    Files.writeString(
        repaired, first.setAside().csv().replace(",14", ",8"), StandardCharsets.UTF_8);
    GraftRecords second = RecordsReader.defaults().read(List.of(repaired));
    assertThat(second.provenance().rowsSetAside()).isZero();
    assertThat(second.takes()).isEqualTo(8);
  }

  /** The messy sheets have other headings, dates and decimal signs each. */
  @Test
  void rows_of_unlike_sheets_are_repaired_in_one_file_and_read_by_the_rules_of_their_own()
      throws IOException {
    Path messy = SHEET.getParent().resolveSibling("halden-bay-avocado-messy");
    RecordsReader reader =
        RecordsReader.defaults()
            .withToday(LocalDate.of(2026, 11, 25))
            .withDictionary(SheetDictionary.load(messy.resolve("dictionary.json")));
    GraftRecords first = reader.readFolder(messy, "sheet-*.csv");
    Path file = folder.resolve("set-aside.csv");
    Files.writeString(
        file,
        first
            .setAside()
            .csv()
            .replace("60 %", "0")
            .replace(",\"2,5\",", ",1,")
            .replace("#REF!", "1"));
    GraftRecords again = reader.read(List.of(file));
    assertThat(again.provenance().rowsRead()).isEqualTo(first.setAside().size());
    assertThat(again.provenance().rowsSetAside()).isLessThan(first.setAside().size());
    assertThat(again.frame().dateColumn("graft_date").asList())
        .doesNotContainNull()
        .extracting(LocalDate::getYear)
        .contains(2022, 2023);
    assertThat(again.frame().columnNames()).doesNotContain("Label", "Variety", "date grafted");
  }

  private static String damaged(List<String> lines, Random random) {
    StringBuilder text = new StringBuilder(String.join("\n", lines)).append('\n');
    int wounds = 1 + random.nextInt(25);
    for (int w = 0; w < wounds; w++) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(4)) {
        case 0 -> text.deleteCharAt(at);
        case 1 -> text.insert(at, SPLINTERS[random.nextInt(SPLINTERS.length)]);
        case 2 -> text.setCharAt(at, (char) (32 + random.nextInt(95)));
        default -> {
          int end = text.indexOf("\n", at);
          if (end > 0) {
            text.insert(end + 1, lines.get(1 + random.nextInt(lines.size() - 1)) + "\n");
          }
        }
      }
    }
    return text.toString();
  }
}
