package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.terms.Problem;

/** The same sheet is counted once where that is sure, and asked about where it isn't. */
class SameFilesTest {

  @TempDir private Path folder;

  private Path sheet(String name) throws IOException {
    return Files.writeString(
        folder.resolve(name), "cultivar,rootstock,grafts,takes\nOrrin,Pellin,10,9\n");
  }

  private List<String> said(GraftRecords records) {
    return records.check().sameTwice().stream()
        .map(Problem::sentence)
        .map(sentence -> sentence.replace(folder + "/", ""))
        .toList();
  }

  @Test
  void a_file_named_twice_is_read_once_and_said() throws IOException {
    Path file = sheet("season.csv");
    GraftRecords records =
        RecordsReader.defaults().read(List.of(file, file, folder.resolve("./season.csv")));
    assertThat(records.grafts()).isEqualTo(10);
    assertThat(records.provenance().sources()).hasSize(1);
    assertThat(said(records))
        .containsExactly(
            "season.csv: found \"this file named twice\", expected each file once; it was read"
                + " once; if another file was meant, name that one",
            "./season.csv: found \"the same file as season.csv\", expected each file once; it was"
                + " read once; if another file was meant, name that one");
  }

  @Test
  void a_copy_is_read_and_asked_about() throws IOException {
    GraftRecords records =
        RecordsReader.defaults().read(List.of(sheet("season.csv"), sheet("copy.csv")));
    assertThat(records.grafts()).isEqualTo(20);
    assertThat(said(records))
        .singleElement()
        .asString()
        .contains("the same contents as season.csv");
  }

  /**
   * A pattern for days came to no end over a cell that begins with a digit and goes on in letters.
   */
  @Test
  void long_cells_are_soon_told_apart() throws IOException {
    String[] names = {"one.csv", "two.csv"};
    for (String name : names) {
      Files.writeString(
          folder.resolve(name),
          "cultivar,rootstock,grafts,takes,notes\nOrrin,Pellin,10,9,1%s%s\n"
              .formatted("a".repeat(30_000), name));
    }
    GraftRecords records =
        RecordsReader.defaults().read(List.of(folder.resolve(names[0]), folder.resolve(names[1])));
    assertThat(said(records)).isEmpty();
    assertThat(records.grafts()).isEqualTo(20);
  }

  @Test
  void two_worksheets_with_the_same_contents_are_asked_about() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      worksheet(book, "2024", 9);
      worksheet(book, "2025", 8);
      worksheet(book, "2024 (2)", 9);
    }
    Path file = Files.write(folder.resolve("club.xlsx"), out.toByteArray());
    assertThat(said(RecordsReader.defaults().read(List.of(file))))
        .containsExactly(
            "club.xlsx, sheet 2024 (2): found \"the same contents as club.xlsx, sheet 2024\","
                + " expected each worksheet once; read one of the two only; else each graft counts"
                + " twice");
  }

  private static void worksheet(Workbook book, String name, int takes) {
    Worksheet sheet = book.newWorksheet(name);
    String[] headings = {"cultivar", "rootstock", "grafts", "takes"};
    for (int i = 0; i < headings.length; i++) {
      sheet.value(0, i, headings[i]);
    }
    for (int row = 1; row <= 2; row++) {
      sheet.value(row, 0, "Orrin");
      sheet.value(row, 1, "Pellin");
      sheet.value(row, 2, 10 + row);
      sheet.value(row, 3, row == 1 ? 7 : takes);
    }
  }

  /** A list kept in a workbook and saved as CSV, which writes days and decimals in its own way. */
  @Test
  void a_list_as_csv_and_as_workbook_is_asked_about() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      worksheet(book, "2024", 9);
    }
    Path workbook = Files.write(folder.resolve("club.xlsx"), out.toByteArray());
    Path text =
        Files.writeString(
            folder.resolve("club.csv"),
            "cultivar,rootstock,grafts,takes\nOrrin,Pellin,11,7\nOrrin,Pellin,12,9\n");
    assertThat(said(RecordsReader.defaults().read(List.of(workbook, text))))
        .singleElement()
        .asString()
        .contains("club.csv: found \"the same contents as club.xlsx");
    assertThat(DictionaryProposal.of(List.of(workbook, text)).questions())
        .anyMatch(question -> question.contains("club.csv: it holds the same rows as"));
  }
}
