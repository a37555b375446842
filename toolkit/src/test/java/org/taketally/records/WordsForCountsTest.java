package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.ProblemKind;

/** Counts in words, and days with their unit. */
class WordsForCountsTest {

  private static final String SHEET =
      """
      cultivar,rootstock,storage_days,grafts,takes
      Orrin,Pellin,12 d,10,8
      Orrin,Halden,3 Tage,12,all
      Bexley,Pellin,2 weeks,9,none
      Bexley,Halden,7,10,perhaps
      """;

  @TempDir Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("sheet.csv"), text);
  }

  private static List<String> remedies(GraftRecords records) {
    return records.problems().stream()
        .filter(problem -> problem.severity() == ProblemKind.NOT_A_NUMBER.severity())
        .map(problem -> problem.remedy())
        .toList();
  }

  @Test
  void a_word_under_takes_names_the_entry_that_reads_it() throws IOException {
    assertThat(remedies(ByDictionary.read("{}", sheet(SHEET))))
        .containsExactly(
            "write the number; if it means that all grafts of the row took, say \"same\": {\"all\":"
                + " [\"all\"]} for takes in the dictionary; if it means \"not recorded\", leave it"
                + " blank or list it under \"missing\" there",
            "write the number; if it means none of them, say \"same\": {\"0\": [\"none\"]} for takes"
                + " in the dictionary; if it means \"not recorded\", leave it blank or list it under"
                + " \"missing\" there",
            "write the number; if it means that all grafts of the row took, say \"same\": {\"all\":"
                + " [\"perhaps\"]}; if it means none of them, say \"same\": {\"0\": [\"perhaps\"]}"
                + " for takes in the dictionary; if it means \"not recorded\", leave it blank or"
                + " list it under \"missing\" there");
  }

  @Test
  void the_entry_reads_it_and_days_are_read_in_their_own_unit() throws IOException {
    GraftRecords records =
        ByDictionary.read(
            "{\"columns\": {\"takes\": {\"same\": {\"all\": [\"all\"], \"0\": [\"none\"]},"
                + " \"missing\": [\"perhaps\"]}}}",
            sheet(SHEET));
    assertThat(records.setAside().size()).isZero();
    assertThat(records.grafts()).isEqualTo(31);
    assertThat(records.takes()).isEqualTo(20);
    assertThat(records.frame().doubleColumn("storage_days").asList())
        .containsExactly(12.0, 3.0, 14.0, 7.0);
  }

  @Test
  void suggest_asks_what_the_words_mean() throws IOException {
    Path file = sheet(SHEET);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).doesNotContain("same");
    assertThat(proposal.questions(file.toString()))
        .containsExactly(
            "\"all\" stands under \"takes\" once and may mean all of the grafts; add \"same\":"
                + " {\"all\": [\"all\"]} to takes (or \"same\": {\"0\": [\"all\"]} if it means none;"
                + " or list it under \"missing\")",
            "\"none\" stands under \"takes\" once and may mean none of the grafts; add \"same\":"
                + " {\"0\": [\"none\"]} to takes (or \"same\": {\"all\": [\"none\"]} if it means all;"
                + " or list it under \"missing\")",
            "\"perhaps\" stands under \"takes\" once and may mean all of the grafts; add \"same\":"
                + " {\"all\": [\"perhaps\"]} to takes (or \"same\": {\"0\": [\"perhaps\"]} if it"
                + " means none; or list it under \"missing\")");
    List<OpenQuestion> open = proposal.open();
    open.get(0).settle(0);
    open.get(1).settle(0);
    open.get(2).settle(2);
    assertThat(ByDictionary.read(proposal.json(), file).takes()).isEqualTo(20);
  }

  /** All of how many? Nothing is reckoned. */
  @Test
  void all_of_an_unknown_number_is_set_aside() throws IOException {
    String said = "{\"columns\": {\"takes\": {\"same\": {\"all\": [\"alle\"]}}}}";
    GraftRecords without =
        ByDictionary.read(
            said, sheet("cultivar,rootstock,takes\nOrrin,Pellin,alle\nOrrin,Halden,alle\n"));
    assertThat(without.setAside().size()).isEqualTo(2);
    GraftRecords blank =
        ByDictionary.read(
            said,
            sheet("cultivar,rootstock,grafts,takes\nOrrin,Pellin,,alle\nOrrin,Halden,1,alle\n"));
    assertThat(blank.setAside().size()).isEqualTo(1);
    assertThat(blank.takes()).isEqualTo(1);
  }

  @Test
  void a_word_for_something_else_than_a_count_is_refused() {
    assertThatThrownBy(
            () ->
                SheetDictionary.parse(
                    "d", "{\"columns\": {\"takes\": {\"same\": {\"most\": [\"x\"]}}}}"))
        .hasMessage(
            "d, column columns.takes.same: found \"most\", expected a whole number, or \"all\" for"
                + " all grafts of the row; put the count first, the word in the list: \"same\":"
                + " {\"0\": [\"none\"]}");
  }
}
