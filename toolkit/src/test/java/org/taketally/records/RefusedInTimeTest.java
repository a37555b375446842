package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;

/** What is too large, endless or damaged is refused in a sentence instead of never. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class RefusedInTimeTest {

  private static final String HEADER = "cultivar,rootstock,grafts,takes";

  @TempDir private Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("sheet.csv"), text);
  }

  private static String refusal(Path file) {
    return catchThrowableOfType(
            RecordsUnreadable.class, () -> RecordsReader.defaults().read(List.of(file)))
        .problem()
        .sentence();
  }

  private static String refusal(String dictionary) {
    return catchThrowableOfType(
            RecordsUnreadable.class, () -> SheetDictionary.parse("d.json", dictionary))
        .problem()
        .sentence();
  }

  @Test
  void a_row_of_a_thousand_million_grafts_is_set_aside() throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .read(List.of(sheet(HEADER + "\nOrrin,Ostrey,1000000000,5\nOrrin,Ostrey,10,5\n")));
    assertThat(records.provenance().rowsSetAside()).isEqualTo(1);
    assertThat(records.problems().get(0).sentence())
        .contains("found \"1000000000\", expected a whole number up to 1000000");
  }

  @ParameterizedTest
  @ValueSource(strings = {"10000000000", "99999999999999999999"})
  void a_count_above_all_others_is_told_how_high_it_may_be(String grafts) throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .read(List.of(sheet(HEADER + "\nOrrin,Ostrey," + grafts + ",5\nOrrin,Ostrey,10,5\n")));
    assertThat(records.problems().get(0).sentence())
        .contains("found \"" + grafts + "\", expected a whole number up to 1000000");
  }

  /** A note pasted below names: likeness of two takes time by the square of their length. */
  @Test
  void names_as_long_as_books_are_compared_at_once() throws IOException {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 1; i < 150; i++) {
      text.append('\n').append("n".repeat(i * 900)).append(",Ostrey,10,5");
    }
    assertThat(RecordsReader.defaults().read(List.of(sheet(text + "\n"))).frame().rowCount())
        .isEqualTo(149);
  }

  @Test
  void a_dictionary_that_is_no_json_is_told_in_plain_words() {
    assertThat(refusal("{'columns': {}}"))
        .startsWith("d.json line 1: found \"text that isn't JSON at line 1 column 3\", expected");
  }

  @Test
  void a_hundred_thousand_columns_are_refused() throws IOException {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < 100_000; i++) {
      text.append(",c").append(i);
    }
    assertThat(refusal(sheet(text + "\n"))).contains("more than 2,000 columns");
  }

  @Test
  void a_cell_without_end_is_refused() throws IOException {
    String cell = "x".repeat(3_000_000);
    assertThat(refusal(sheet(HEADER + "\nOrrin,Ostrey,10,5\nOrrin," + cell + ",10,5\n")))
        .contains("line 3: found \"a cell of more than 1,000,000 signs\"");
  }

  @Test
  void a_pattern_of_many_stars_is_matched_at_once() throws IOException {
    Path file = Files.writeString(folder.resolve("a".repeat(60) + ".csv"), HEADER + "\nO,H,10,5\n");
    SheetDictionary dictionary =
        SheetDictionary.parse(
            "d.json",
            "{\"files\": {\""
                + "*a".repeat(30)
                + "*b\": {\"dates\": \"dd/MM/yyyy\"}, \"a*a?csv\": {}}}");
    assertThat(dictionary.unmatched(List.of(file.toString())))
        .containsExactly("*a".repeat(30) + "*b");
  }

  @ParameterizedTest
  @ValueSource(strings = {"dd{MM}yyyy", "dd[MM]yyyy", "d#M#yy", "y-M-d-y", "dd'MM'yyyy"})
  void a_date_pattern_that_is_none_is_refused(String pattern) {
    assertThat(refusal("{\"dates\": \"" + pattern + "\"}")).contains("d.json", pattern);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e99999999999", "1e999999", "-1e400"})
  void a_number_without_measure_is_refused(String number) {
    assertThat(refusal("{\"season_start\": " + number + "}")).contains("d.json", "the number");
  }

  @Test
  void headings_that_differ_by_case_only_are_refused_in_a_sheet() throws IOException {
    assertThat(refusal(sheet("Tag,tag," + HEADER + "\n1,2,O,H,10,5\n")))
        .contains("Tag, tag", "ignore one of them in the dictionary");
  }

  @Test
  void headings_that_differ_by_case_between_sheets_are_one_column() throws IOException {
    Path one = sheet("Tag," + HEADER + "\na,O,H,10,5\n");
    Path other = Files.writeString(folder.resolve("b.csv"), "tag," + HEADER + "\nb,O,H,10,5\n");
    assertThat(
            RecordsReader.defaults().read(List.of(one, other)).frame().stringColumn("Tag").asList())
        .containsExactly("a", "b");
  }

  @Test
  void a_crop_profile_in_another_encoding_is_told() throws IOException {
    Path crop =
        Files.write(
            folder.resolve("crop.csv"),
            "item,value,unit,source\ncrop,Birne für Most,text,name\n"
                .getBytes(StandardCharsets.ISO_8859_1));
    assertThat(
            catchThrowableOfType(RecordsUnreadable.class, () -> CropProfiles.load(crop))
                .problem()
                .sentence())
        .contains("line 2: found \"byte FC\", expected text in UTF-8");
  }

  @Test
  void rows_set_aside_are_read_again_whatever_the_dictionary_says_of_delimiters()
      throws IOException {
    Path file =
        Files.write(
            folder.resolve("s.csv"),
            "cultivar;rootstock;grafts;takes\nBirné;H;10;12\n"
                .getBytes(StandardCharsets.ISO_8859_1));
    RecordsReader reader =
        RecordsReader.defaults()
            .withDictionary(
                SheetDictionary.parse(
                    "d.json", "{\"delimiter\": \";\", \"encoding\": \"windows-1252\"}"));
    Path aside = folder.resolve("set-aside.csv");
    reader.read(List.of(file)).setAside().write(aside);
    Files.writeString(aside, Files.readString(aside).replace("10,12", "10,2"));
    GraftRecords again = reader.read(List.of(aside));
    assertThat(again.grafts()).isEqualTo(10);
    assertThat(again.frame().stringColumn("cultivar").get(0)).isEqualTo("Birné");
  }

  private Path workbook() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = book.newWorksheet("2024");
      String[] headings = HEADER.split(",", -1);
      for (int i = 0; i < headings.length; i++) {
        sheet.value(0, i, headings[i]);
        sheet.value(1, i, i < 2 ? headings[i] + " A" : null);
      }
      sheet.value(1, 2, 10);
      sheet.value(1, 3, 5);
    }
    return Files.write(folder.resolve("book.xlsx"), out.toByteArray());
  }

  /** The workbook with a part changed by a function of its text. */
  private Path changed(String part, java.util.function.UnaryOperator<String> change)
      throws IOException {
    Path whole = workbook();
    Path other = folder.resolve("changed.xlsx");
    try (ZipFile zip = new ZipFile(whole.toFile());
        OutputStream file = Files.newOutputStream(other);
        ZipOutputStream out = new ZipOutputStream(file)) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        String text = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
        out.putNextEntry(new ZipEntry(entry.getName()));
        out.write(
            (entry.getName().equals(part) ? change.apply(text) : text)
                .getBytes(StandardCharsets.UTF_8));
        out.closeEntry();
      }
    }
    return other;
  }

  @Test
  void the_workbook_itself_is_read() throws IOException {
    assertThat(RecordsReader.defaults().read(List.of(workbook())).grafts()).isEqualTo(10);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<v>10</v>|<v>NaN</v>|cell C2 with NaN for a number",
        "<v>10</v>|<v>1e999</v>|cell C2 with 1e999 for a number",
        "r=\"C2\"|r=\"ZZZZZZ2\"|a cell that says it stands at ZZZZZZ2",
        "r=\"C2\"|r=\"C99999999\"|a cell that says it stands at C99999999",
        "r=\"C2\"|r=\"C2\" s=\"77\"|cell C2 in a style the workbook doesn't have",
        "r=\"C2\" t=\"n\"|r=\"C2\" t=\"s\"|cell C2 without its text",
        "r=\"C2\" t=\"n\"|r=\"C2\" t=\"d\"|cell C2 with a date kept as text (10)",
      })
  void a_cell_that_would_be_read_as_something_else_is_named(String from, String to, String told)
      throws IOException {
    Path file =
        changed(
            "xl/worksheets/sheet1.xml",
            text -> {
              assertThat(text).contains(from);
              return text.replaceFirst(java.util.regex.Pattern.quote(from), to);
            });
    assertThat(refusal(file)).contains(told, "save it again");
  }

  @Test
  void entities_are_refused_before_anything_is_fetched() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "secret");
    for (String part :
        List.of("xl/sharedStrings.xml", "xl/worksheets/sheet1.xml", "xl/workbook.xml")) {
      Path file =
          changed(
              part,
              text ->
                  text.replaceFirst(
                      "\\?>", "?><!DOCTYPE x [<!ENTITY a SYSTEM \"" + secret.toUri() + "\">]>"));
      assertThat(refusal(file)).contains("defines entities").doesNotContain("secret\"");
    }
  }

  @Test
  void a_workbook_that_unpacks_without_end_is_refused() throws IOException {
    Path bomb = folder.resolve("bomb.xlsx");
    byte[] blank = " ".repeat(1 << 20).getBytes(StandardCharsets.UTF_8);
    try (OutputStream file = Files.newOutputStream(bomb);
        ZipOutputStream out = new ZipOutputStream(file)) {
      out.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
      out.write("<worksheet>".getBytes(StandardCharsets.UTF_8));
      for (int i = 0; i < 400; i++) {
        out.write(blank);
        out.write("<x/>".getBytes(StandardCharsets.UTF_8));
      }
      out.closeEntry();
    }
    assertThat(refusal(bomb)).containsAnyOf("unpacks to more than", "more than 1,000,000 signs");
  }

  @Test
  void a_text_of_a_thousand_million_signs_is_refused() throws IOException {
    Path huge = folder.resolve("huge.xlsx");
    byte[] signs = "x".repeat(1 << 20).getBytes(StandardCharsets.UTF_8);
    try (OutputStream file = Files.newOutputStream(huge);
        ZipOutputStream out = new ZipOutputStream(file)) {
      out.putNextEntry(new ZipEntry("xl/sharedStrings.xml"));
      out.write("<sst><si><t>".getBytes(StandardCharsets.UTF_8));
      for (int i = 0; i < 1000; i++) {
        out.write(signs);
      }
      out.write("</t></si></sst>".getBytes(StandardCharsets.UTF_8));
      out.closeEntry();
    }
    assertThat(refusal(huge)).contains("more than 1,000,000 signs in xl/sharedStrings.xml");
  }
}
