package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;

/** Workbooks as other programs write them: without styles or shared texts, with dates as text. */
class BareWorkbookTest {

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";

  @TempDir private Path folder;

  private Path workbook(String rows) throws IOException {
    Map<String, String> parts = new LinkedHashMap<>();
    parts.put(
        "[Content_Types].xml",
        "<Types xmlns=\"%scontent-types\"><Default Extension=\"xml\" ContentType=\"application/xml\"/>"
                .formatted(PACKAGE)
            + "<Default Extension=\"rels\""
            + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Override"
            + " PartName=\"/xl/workbook.xml\""
            + " ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override"
            + " PartName=\"/xl/worksheets/sheet1.xml\""
            + " ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>");
    parts.put(
        "_rels/.rels",
        "<Relationships xmlns=\"%srelationships\"><Relationship Id=\"rId1\" Type=\"%s/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            .formatted(PACKAGE, OFFICE));
    parts.put(
        "xl/workbook.xml",
        "<workbook xmlns=\"%s\" xmlns:r=\"%s\"><sheets><sheet name=\"2026\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>"
            .formatted(MAIN, OFFICE));
    parts.put(
        "xl/_rels/workbook.xml.rels",
        "<Relationships xmlns=\"%srelationships\"><Relationship Id=\"rId1\" Type=\"%s/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>"
            .formatted(PACKAGE, OFFICE));
    parts.put(
        "xl/worksheets/sheet1.xml",
        "<worksheet xmlns=\"%s\"><sheetData>%s</sheetData></worksheet>".formatted(MAIN, rows));
    Path file = folder.resolve("bare.xlsx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(
            ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + part.getValue())
                .getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    return file;
  }

  private static String row(int number, String... cells) {
    StringBuilder row = new StringBuilder("<row r=\"%d\">".formatted(number));
    for (int i = 0; i < cells.length; i++) {
      String at = (char) ('A' + i) + "" + number;
      String cell = cells[i];
      if (cell.startsWith("day ")) {
        row.append("<c r=\"%s\" t=\"d\"><v>%s</v></c>".formatted(at, cell.substring(4)));
      } else if (cell.matches("[0-9.]+")) {
        row.append("<c r=\"%s\"><v>%s</v></c>".formatted(at, cell));
      } else if (!cell.isEmpty()) {
        row.append("<c r=\"%s\" t=\"inlineStr\"><is><t>%s</t></is></c>".formatted(at, cell));
      }
    }
    return row.append("</row>").toString();
  }

  @Test
  void a_workbook_without_styles_and_shared_texts_is_read() throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .read(
                workbook(
                    row(1, "cultivar", "rootstock", "grafts", "takes")
                        + row(2, "Corvane", "Pellin", "10", "7")
                        + row(3, "Orrin", "say t=&quot;d&quot; now", "5", "4")));
    assertThat(records.grafts()).isEqualTo(15);
    assertThat(records.takes()).isEqualTo(11);
  }

  @Test
  void dates_kept_as_text_are_read_as_days() throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .withToday(LocalDate.of(2026, 11, 1))
            .read(
                workbook(
                    row(1, "cultivar", "rootstock", "graft_date", "grafts", "takes")
                        + row(2, "Corvane", "Pellin", "day 2026-03-04", "10", "7")
                        + row(3, "Orrin", "a t=\"d\" b", "day 2026-03-05T00:00:00", "5", "4")));
    assertThat(records.frame().dateColumn("graft_date").asList())
        .containsExactly(LocalDate.of(2026, 3, 4), LocalDate.of(2026, 3, 5));
    assertThat(records.frame().stringColumn("rootstock").get(1)).isEqualTo("a t=\"d\" b");
    assertThat(records.summary().text()).doesNotContain("times of day");
  }

  /** What merged cells leave: their value in the first cell, nothing in the others. */
  @Test
  void names_in_merged_cells_stand_for_all_their_rows() throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(
                SheetDictionary.parse("d", "{\"fill_down\": [\"cultivar\", \"rootstock\"]}"))
            .read(
                workbook(
                    row(1, "cultivar", "rootstock", "grafter", "grafts", "takes")
                        + row(2, "Corvane", "Pellin", "Ann", "10", "7")
                        + row(3, "", "", "Bo", "5", "4")
                        + row(4, "", "Varric", "Ann", "5", "2")));
    assertThat(records.frame().stringColumn("cultivar").asList())
        .containsExactly("Corvane", "Corvane", "Corvane");
    assertThat(records.frame().stringColumn("rootstock").asList())
        .containsExactly("Pellin", "Pellin", "Varric");
  }
}
