package org.taketally.plan.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.wording.ListReadingWords;

/** Order books as spreadsheets save them. */
class OrderBookTest {

  @TempDir private Path folder;

  private Path book(String text, Charset encoding) throws IOException {
    return Files.write(folder.resolve("book.csv"), text.getBytes(encoding));
  }

  private Path book(String text) throws IOException {
    return book(text, StandardCharsets.UTF_8);
  }

  @Test
  void semicolons_decimal_commas_and_a_byte_order_mark_are_read() throws IOException {
    OrderBook book = OrderBook.read(book("\uFEFFCultivar;Trees;Take\nDunsöber;25;62,5\n"));
    assertThat(book.problems()).isEmpty();
    assertThat(book.entries()).hasSize(1);
    assertThat(book.entries().get(0).line().cultivar()).isEqualTo("Dunsöber");
    assertThat(book.entries().get(0).take()).hasValue(0.625);
  }

  @Test
  void another_encoding_is_told_with_its_line() throws IOException {
    Path book = book("cultivar,trees\nOrrin,5\nDunsöber,25\n", StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> OrderBook.read(book))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("line 3")
        .hasMessageContaining("UTF-8");
  }

  @Test
  void a_workbook_of_one_worksheet_is_read() throws IOException {
    Path file = folder.resolve("book.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook workbook = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = workbook.newWorksheet("orders");
      sheet.value(0, 0, "cultivar");
      sheet.value(0, 1, "trees");
      sheet.value(0, 2, "due");
      sheet.value(1, 0, "Orrin");
      sheet.value(1, 1, 40);
      sheet.value(1, 2, LocalDate.of(2027, 10, 1));
      sheet.style(1, 2).format("yyyy-MM-dd").set();
    }
    OrderBook book = OrderBook.read(file);
    assertThat(book.problems()).isEmpty();
    assertThat(book.entries().get(0).line().trees()).isEqualTo(40);
    assertThat(book.entries().get(0).line().due()).hasValue(LocalDate.of(2027, 10, 1));
  }

  @Test
  void too_many_trees_are_told_with_the_most_there_can_be() throws IOException {
    OrderBook book = OrderBook.read(book("cultivar,trees\nOrrin,1000000000\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 2, column trees: found \"1000000000\", expected a whole number from 1"
                + " to 9,999,999; correct it");
  }

  @Test
  void a_line_that_sums_up_is_no_order() throws IOException {
    OrderBook book = OrderBook.read(book("cultivar,trees\nOrrin,5\nBrell,25\nTotal:,30\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 4, column cultivar: found \"Total:\", expected the name of a cultivar,"
                + " not of a sum; delete the line: it would be counted once more");
  }

  /** Three of four as a share, not per cent. */
  @Test
  void a_take_written_as_a_share_is_told() throws IOException {
    OrderBook book = OrderBook.read(book("cultivar,trees,take\nOrrin,5,0.75\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .singleElement()
        .asString()
        .contains("found \"0.75\", expected per cent from 1 to 100, e.g. 75");
  }

  /** A thousand trees, which a comma makes one tree and a field without a heading. */
  @Test
  void more_fields_than_headings_are_told() throws IOException {
    OrderBook book = OrderBook.read(book("cultivar,trees\nOrrin,1,000\nBrell,25,\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 2: found \"Orrin | 1 | 000\", expected 2 fields at most, one a heading;"
                + " write numbers without a comma, and put names that hold one in quotation marks");
  }

  @Test
  void a_heading_that_stands_twice_is_told() throws IOException {
    Path book = book("cultivar,Cultivar,trees\nOrrin,Brell,5\n");
    assertThatThrownBy(() -> OrderBook.read(book))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("line 1: found \"cultivar, Cultivar\", expected one column for");
  }

  /** What customers, prices and remarks stand under is said not to be read. */
  @Test
  void headings_of_other_languages_are_read_and_that_is_said() throws IOException {
    OrderBook german =
        OrderBook.read(
            book("Kunde;Sorte;Unterlage;Stück;Liefertermin;Anwuchs %\nA;Orrin;egal;100;;80\n"));
    assertThat(german.problems()).isEmpty();
    assertThat(german.entries())
        .extracting(OrderBook.Entry::line)
        .containsExactly(new OrderLine("Orrin", Optional.empty(), 100, Optional.empty()));
    assertThat(german.entries().get(0).take()).hasValue(0.8);
    assertThat(ListReadingWords.of(german.headings()))
        .containsExactly(
            "Headings were read by what they mean: \"Sorte\" as cultivar, \"Unterlage\" as"
                + " rootstock, \"Stück\" as trees, \"Liefertermin\" as due, \"Anwuchs %\" as"
                + " take. If one is wrong, name the column as it should be, or say it in a"
                + " dictionary (--dictionary).",
            "One column wasn't read: \"Kunde\".");
    for (String headings :
        List.of(
            "variedad,patrón,árboles,entrega,prendimiento",
            "variété,porte-greffe,nombre d'arbres,livraison,reprise",
            "varietà,portinnesto,piante,consegna,attecchimento",
            "variedade,porta-enxerto,mudas,entrega,pegamento")) {
      OrderBook book = OrderBook.read(book(headings + "\nOrrin,Pellin,100,2027-05-01,80\n"));
      assertThat(book.problems()).as(headings).isEmpty();
      assertThat(book.entries().get(0).line().due()).as(headings).isPresent();
      assertThat(book.entries().get(0).take()).as(headings).hasValue(0.8);
    }
  }

  /** Two headings that may be the same column are none; what is missing is said in one line. */
  @Test
  void a_needed_column_that_is_missing_is_said_in_one_line() throws IOException {
    assertThat(OrderBook.read(book("Kunde;Sorte;Stückchen\nA;Orrin;5\n")).problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 1: found \"Kunde, Sorte, Stückchen\", expected a column trees beside"
                + " cultivar (\"Sorte\"); name the heading so, or say in a dictionary"
                + " (--dictionary) which it is, e.g. \"columns\": {\"trees\": \"Stückchen\"}");
    assertThat(OrderBook.read(book("Sorte;Menge;Stück\nOrrin;5;6\n")).problems())
        .extracting(Problem::sentence)
        .singleElement()
        .asString()
        .contains("expected a column trees beside cultivar", "{\"trees\": \"Menge\"}");
    assertThat(OrderBook.read(book("Bestellungen 2027;;\nSorte;Stück;Kunde\nO;5;A\n")).problems())
        .extracting(Problem::sentence)
        .singleElement()
        .asString()
        .contains("headings seem to stand in line 2");
  }

  @Test
  void a_slip_in_a_heading_is_told() throws IOException {
    assertThat(OrderBook.read(book("cultivar,trees,stiks\nOrrin,5,3\n")).problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 1, column stiks: found \"stiks\", expected a heading of ours or one of"
                + " your own; did you mean sticks? Then write it so; else call the column"
                + " otherwise");
  }

  @Test
  void a_dictionary_says_how_a_book_is_written() throws IOException {
    SheetDictionary dictionary =
        SheetDictionary.parse(
            "d.json",
            """
            {"dates": "dd.MM.yyyy", "missing": ["-"], "heading_row": 2,
             "columns": {"cultivar": {"from": "Was", "same": {"Orrin": ["Orr."]}},
              "trees": "Wieviel", "due": "Bis wann", "take": "Erfolg"},
             "constants": {"rootstock": "Pellin"}}
            """);
    Path file = book("Bestellungen\nWas;Wieviel;Bis wann;Erfolg\nOrr.;20;01.05.2027;-\n");
    OrderBook book = OrderBook.read(file, dictionary);
    assertThat(book.problems()).isEmpty();
    assertThat(book.entries().get(0))
        .isEqualTo(
            new OrderBook.Entry(
                new OrderLine(
                    "Orrin", Optional.of("Pellin"), 20, Optional.of(LocalDate.of(2027, 5, 1))),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                OptionalInt.empty()));
    Path plain = Files.writeString(folder.resolve("p.csv"), "cultivar,trees\nOrr.,20\n");
    assertThat(OrderBook.read(plain, dictionary.besideRecords()).entries().get(0).line())
        .as("what is said of the layout is said of the records")
        .isEqualTo(new OrderLine("Orrin", Optional.empty(), 20, Optional.empty()));
  }

  @Test
  void a_day_that_reads_two_ways_is_told_with_both() throws IOException {
    assertThat(OrderBook.read(book("cultivar,trees,due\nOrrin,5,01.05.2027\n")).problems())
        .extracting(Problem::sentence)
        .singleElement()
        .asString()
        .contains(
            "1 May 2027 (dd.MM.yyyy) or 5 January 2027",
            "\"dates\": \"dd.MM.yyyy\" (--dictionary), or write the day as year-month-day");
  }

  @Test
  void days_that_are_none_and_dashes_for_names_are_told() throws IOException {
    OrderBook book =
        OrderBook.read(
            book("cultivar,rootstock,trees,due\nOrrin,-,5,May 2027\n-,any,5,\nSomme,,5,\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 2, column rootstock: found \"-\", expected the name of a stock; leave it"
                + " empty, or write any, if any will do",
            "book.csv line 2, column due: found \"May 2027\", expected a date as yyyy-MM-dd; write"
                + " it so, e.g. 2027-04-15, or leave it empty",
            "book.csv line 3, column cultivar: found \"-\", expected the name of a cultivar; say"
                + " what is ordered, or delete the line",
            "book.csv line 4, column cultivar: found \"Somme\", expected the name of a cultivar,"
                + " not of a sum; delete the line: it would be counted once more");
  }

  @Test
  void a_take_in_a_cell_of_per_cent_is_read() throws IOException {
    Path file = folder.resolve("percent.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook workbook = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = workbook.newWorksheet("orders");
      sheet.value(0, 0, "Sorte");
      sheet.value(0, 1, "Stück");
      sheet.value(0, 2, "Anwuchs");
      sheet.value(1, 0, "Orrin");
      sheet.value(1, 1, 40);
      sheet.value(1, 2, 0.8);
      sheet.style(1, 2).format("0%").set();
    }
    OrderBook book = OrderBook.read(file);
    assertThat(book.problems()).extracting(Problem::sentence).isEmpty();
    assertThat(book.entries().get(0).take()).hasValue(0.8);
  }

  @Test
  void a_quotation_that_never_closes_is_told() throws IOException {
    Path book = book("cultivar,trees\n\"Orrin,5\nBrell,25\n");
    assertThatThrownBy(() -> OrderBook.read(book))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("quotation mark");
  }
}
