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
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;

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
    OrderBook book = OrderBook.read(book("cultivar,Cultivar,trees\nOrrin,Brell,5\n"));
    assertThat(book.problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 1, column cultivar: found \"the heading more than once\", expected each"
                + " heading once; rename or delete the others");
  }

  @Test
  void a_quotation_that_never_closes_is_told() throws IOException {
    Path book = book("cultivar,trees\n\"Orrin,5\nBrell,25\n");
    assertThatThrownBy(() -> OrderBook.read(book))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("quotation mark");
  }
}
