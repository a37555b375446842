package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;

/** Files that can't be read at all: a sentence with place, found, expected and remedy. */
class UnreadableTest {

  private static final String HEADER = "cultivar,rootstock,outcome\n";
  private static final String ROW = "Orrin,Halden seedling,taken\n";

  @TempDir Path folder;

  private void refuses(String name, byte[] bytes, String sentence) throws IOException {
    Path file = Files.write(folder.resolve(name), bytes);
    refuses(file, RecordsReader.defaults(), sentence);
  }

  private void refuses(String name, String text, String sentence) throws IOException {
    refuses(name, text.getBytes(StandardCharsets.UTF_8), sentence);
  }

  private void refuses(Path file, RecordsReader reader, String sentence) {
    assertThatThrownBy(() -> reader.read(List.of(file)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(sentence.replace("@", folder + "/"));
  }

  @Test
  void no_such_file_or_a_folder() {
    refuses(
        folder.resolve("none.csv"),
        RecordsReader.defaults(),
        "@none.csv: found \"no such file\", expected a CSV or XLSX file; check"
            + " the name and the folder");
    refuses(
        folder,
        RecordsReader.defaults(),
        folder
            + ": found \"a folder\", expected a CSV or XLSX file; name the files"
            + " in it, e.g. @*.csv");
  }

  @Test
  void a_folder_without_such_files() {
    assertThatThrownBy(() -> RecordsReader.defaults().readFolder(folder, "grafts-*.csv"))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(
            folder
                + "/grafts-*.csv: found \"no such file\", expected a CSV or XLSX file"
                + "; check the folder and the pattern");
    assertThatThrownBy(() -> RecordsReader.defaults().readFolder(folder.resolve("none"), "*.csv"))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageEndingWith("check the name and the folder");
  }

  @Test
  void nothing_in_it() throws IOException {
    refuses(
        "empty.csv",
        "",
        "@empty.csv: found \"an empty file\", expected a CSV or XLSX file; save"
            + " the sheet again and check that it has rows");
    refuses(
        "blank.csv",
        "\n\n  \n",
        "@blank.csv: found \"nothing\", expected a line of headings, then one line a graft or"
            + " batch; check that the right file was named");
    refuses(
        "headings.csv",
        HEADER,
        "@headings.csv: found \"headings without a row below them\", expected at least one graft"
            + " or batch; check that the right file or sheet was named");
  }

  @Test
  void not_a_sheet() throws IOException {
    byte[] garbage = new byte[5000];
    new Random(1).nextBytes(garbage);
    garbage[0] = 7;
    refuses(
        "garbage.csv",
        garbage,
        "@garbage.csv: found \"a file that isn't text\", expected a CSV or XLSX file"
            + "; save the sheet as \"CSV UTF-8\" or .xlsx");
    refuses(
        "old.xls",
        new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, 0, 0, 0, 0},
        "@old.xls: found \"an old workbook (.xls)\", expected a CSV or XLSX file;"
            + " save it as .xlsx or as \"CSV UTF-8\"");
    refuses(
        "grafts.parquet",
        "PAR1....",
        "@grafts.parquet: found \"a Parquet file\", expected a CSV or XLSX file;"
            + " read it with a query; see docs/records.md");
    refuses(
        "grafts.csv.gz",
        new byte[] {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0},
        "@grafts.csv.gz: found \"a compressed file\", expected a CSV or XLSX file;"
            + " unpack it first");
    refuses(
        "grafts.pdf",
        "%PDF-1.7 and so on",
        "@grafts.pdf: found \"a PDF\", expected a CSV or XLSX file; ask for the"
            + " sheet it was made from");
  }

  @Test
  void a_broken_workbook() throws IOException {
    Path file =
        Files.write(
            folder.resolve("broken.xlsx"), new byte[] {'P', 'K', 3, 4, 1, 2, 3, 4, 5, 6, 7, 8});
    assertThatThrownBy(() -> RecordsReader.defaults().read(List.of(file)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageStartingWith(file + ": found \"a workbook that can't be opened")
        .hasMessageEndingWith(
            "open it in a spreadsheet and save it as .xlsx or \"CSV UTF-8\" again");
  }

  @Test
  void wrong_encoding_is_named_with_its_line() throws IOException {
    byte[] windows = (HEADER + ROW + "José,Halden seedling,taken\n").getBytes(windows1252());
    refuses(
        "old.csv",
        windows,
        "@old.csv line 3: found \"byte E9\", expected text in UTF-8; save the sheet as \"CSV"
            + " UTF-8\", or name its encoding in the dictionary, e.g. \"encoding\":"
            + " \"windows-1252\"");
    refuses(
        "wide.csv",
        (HEADER + ROW).getBytes(StandardCharsets.UTF_16),
        "@wide.csv: found \"text in UTF-16\", expected a CSV or XLSX file; save"
            + " the sheet as \"CSV UTF-8\", or say \"encoding\": \"UTF-16\" in the dictionary");
  }

  @Test
  void other_encodings_are_read_when_named() throws IOException {
    for (String encoding : List.of("windows-1252", "UTF-16", "ISO-8859-15")) {
      Path file =
          Files.write(
              folder.resolve("named.csv"),
              (HEADER + "José,Halden seedling,taken\n").getBytes(Charset.forName(encoding)));
      GraftRecords records =
          RecordsReader.defaults()
              .withDictionary(
                  SheetDictionary.parse("d.json", "{\"encoding\": \"" + encoding + "\"}"))
              .read(List.of(file));
      assertThat(records.frame().stringColumn("cultivar").asList()).containsExactly("José");
    }
  }

  @Test
  void all_needed_columns_that_are_absent_are_named_at_once() throws IOException {
    refuses(
        "grafts.csv",
        "kultivar,rootstock,outcome\n" + ROW,
        "@grafts.csv line 1: found \"kultivar, rootstock, outcome\", expected a column cultivar;"
            + " name the headings that hold them in the dictionary, e.g. \"columns\":"
            + " {\"cultivar\": \"kultivar\"}"
            + "; \"taketally dictionary suggest\" proposes one");
    refuses(
        "grafts.csv",
        "Sorte;Unterlage;gemacht;angewachsen\nOrrin;Halden seedling;3;2\n",
        "@grafts.csv line 1: found \"Sorte, Unterlage, gemacht, angewachsen\", expected columns"
            + " cultivar, rootstock, takes or outcome; name the headings that hold them in the"
            + " dictionary, e.g. \"columns\": {\"cultivar\": \"Sorte\", \"rootstock\":"
            + " \"Unterlage\", \"takes\": \"angewachsen\"}"
            + "; \"taketally dictionary suggest\" proposes one");
    refuses(
        "grafts.csv",
        "a,b,c\nOrrin,Halden seedling,3\n",
        "@grafts.csv line 1: found \"a, b, c\", expected columns cultivar, rootstock, takes or"
            + " outcome; name the headings that hold them in the dictionary, e.g. \"columns\":"
            + " {\"cultivar\": \"your heading\", \"rootstock\": \"your heading\", \"takes\": \"your"
            + " heading\"}"
            + "; \"taketally dictionary suggest\" proposes one");
  }

  @Test
  void a_mapping_the_wrong_way_round_is_named() {
    assertThatThrownBy(
            () -> SheetDictionary.parse("d", "{\"columns\": {\"Variety\": \"cultivar\"}}"))
        .hasMessage(
            "d, column columns.Variety: found \"cultivar\", expected our name first and your"
                + " heading second; turn it round: \"cultivar\": \"Variety\"");
  }

  @Test
  void headings_below_a_title_are_pointed_out() throws IOException {
    refuses(
        "grafts.csv",
        "Halden Bay growers' circle;;;\n\nSorte;Unterlage;angewachsen;Datum\nA;B;1;2025-03-01\n",
        "@grafts.csv line 1: found \"Halden Bay growers' circle\", expected columns cultivar,"
            + " rootstock, takes or outcome; line 3 looks like the headings: say \"heading_row\": 3"
            + " in the dictionary; if it isn't, name the headings that hold them in the dictionary,"
            + " e.g. \"columns\": {\"cultivar\": \"your heading\", \"rootstock\": \"your heading\","
            + " \"takes\": \"your heading\"}"
            + "; \"taketally dictionary suggest\" proposes one");
  }

  @Test
  void headings_that_clash() throws IOException {
    refuses(
        "grafts.csv",
        "cultivar,rootstock,cultivar,outcome\nOrrin,Halden seedling,Bexley,taken\n",
        "@grafts.csv line 1: found \"cultivar, cultivar\", expected"
            + " each heading once; give each a heading of its own that says what tells it apart"
            + " (\"made Pellin\", \"made Halden\"), or take out the others");
    refuses(
        Files.writeString(
            folder.resolve("grafts.csv"), "Variety,cultivar,rootstock,outcome\na,b,c,taken\n"),
        RecordsReader.defaults()
            .withDictionary(
                SheetDictionary.parse("d", "{\"columns\": {\"cultivar\": \"Variety\"}}")),
        "@grafts.csv line 1: found \"Variety, cultivar\", expected one column for cultivar;"
            + " ignore one of them in the dictionary, or take it out");
  }

  @Test
  void quotation_marks_that_do_not_pair() throws IOException {
    refuses(
        "open.csv",
        HEADER + ROW + "\"Orrin,Halden seedling,taken\n" + ROW,
        "@open.csv line 3: found \"a quotation mark that opens and never closes\", expected"
            + " quotation marks in pairs; close it, or take it out, on this line or the next ones");
    refuses(
        "text-after.csv",
        HEADER + ROW + "\"Orrin\" x,Halden seedling,taken\n" + ROW,
        "@text-after.csv line 3: found \"more text after a closing quotation mark\","
            + " expected quotation marks around whole fields only; on this line or the next ones,"
            + " close the quotation mark or write \"\" inside a quoted field");
  }

  @Test
  void a_quotation_mark_inside_a_field_is_kept() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("inch.csv"),
            "cultivar,rootstock,pot,outcome\nOrrin,Halden seedling,5\" pot,taken\n");
    assertThat(RecordsReader.defaults().read(List.of(file)).frame().stringColumn("pot").asList())
        .containsExactly("5\" pot");
  }

  private static Charset windows1252() {
    return Charset.forName("windows-1252");
  }
}
