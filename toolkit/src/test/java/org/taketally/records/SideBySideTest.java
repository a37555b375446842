package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.columns.SideBySide;
import org.taketally.records.problems.RecordsUnreadable;

/** Sheets with a set of columns for each grafter: named, asked about, never guessed. */
class SideBySideTest {

  private static final String SETS =
      """
      Variety,Stock,Jo made,Jo alive,Ann made,Ann alive,Total made,Total alive
      Orrin,Pellin,10,7,12,9,22,16
      Orrin,Halden,8,5,,,8,5
      Bexley,Pellin,10,6,10,8,20,14
      """;
  private static final String WIDE =
      """
      [{"set":{"grafter":"Jo"},"columns":{"grafts":"Jo made","takes":"Jo alive"}},\
      {"set":{"grafter":"Ann"},"columns":{"grafts":"Ann made","takes":"Ann alive"}}]""";

  @TempDir Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("sheet.csv"), text);
  }

  @Test
  void check_names_the_sets_and_the_entry_that_reads_them() throws IOException {
    Path file = sheet(SETS);
    assertThatThrownBy(() -> ByDictionary.read("{}", file))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining(
            "expected columns cultivar, rootstock, takes or outcome; results of \"Jo\", \"Ann\""
                + " seem to stand side by side: say \"wide\": "
                + WIDE
                + " in the dictionary, with rootstock, cultivar or site in place of grafter if that"
                + " is what they are; name the headings that hold them in the dictionary, e.g."
                + " \"columns\": {\"cultivar\": \"Variety\", \"rootstock\": \"Stock\"};");
  }

  @Test
  void the_entry_that_check_names_reads_every_set() throws IOException {
    GraftRecords records =
        ByDictionary.read(
            "{\"columns\": {\"cultivar\": \"Variety\", \"rootstock\": \"Stock\"}, \"wide\": "
                + WIDE
                + "}",
            sheet(SETS));
    assertThat(records.grafts()).isEqualTo(50);
    assertThat(records.takes()).isEqualTo(35);
  }

  @Test
  void suggest_asks_whose_results_they_are_and_its_answer_reads_the_sheet() throws IOException {
    Path file = sheet(SETS);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).doesNotContain("wide");
    assertThat(proposal.open()).hasSize(1);
    OpenQuestion question = proposal.open().get(0);
    assertThat(question.text())
        .isEqualTo(
            "results of Jo, Ann stand side by side, and each of these may be a grafter or a site or"
                + " a method; add \"wide\": "
                + WIDE
                + ", with the column that fits in place of \"grafter\"");
    question.settle(0);
    GraftRecords records = ByDictionary.read(proposal.json(), file);
    assertThat(records.grafts()).isEqualTo(50);
    assertThat(records.frame().stringColumn("grafter").unique().asList())
        .containsExactlyInAnyOrder("Jo", "Ann");
  }

  @Test
  void names_alone_over_counts_out_of_grafts_are_asked_about_too() throws IOException {
    Path file = sheet("Variety,Stock,Jo,Ann\nOrrin,Pellin,7/10,9/12\nOrrin,Halden,5/8,\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.open()).hasSize(1);
    proposal.open().get(0).settle(0);
    assertThat(ByDictionary.read(proposal.json(), file).grafts()).isEqualTo(30);
  }

  @Test
  void the_word_may_come_first_and_in_another_language() {
    assertThat(SideBySide.parts(List.of("gemacht Jo", "angewachsen (Jo)", "Ann: lebend")))
        .containsOnlyKeys("Jo", "Ann");
    assertThat(SideBySide.parts(List.of("alive 30 d", "alive 90 d", "made by Jo"))).isEmpty();
  }

  @Test
  void check_names_the_entry_for_seasons_and_for_counting_days() throws IOException {
    assertThatThrownBy(
            () ->
                ByDictionary.read(
                    "{}", sheet("cultivar,rootstock,made 23,alive 23,made 24,alive 24\n")))
        .hasMessageContaining("\"wide\": [{\"set\":{\"season\":\"2023\"},\"columns\":{\"grafts\":");
    assertThatThrownBy(
            () -> ByDictionary.read("{}", sheet("cultivar,rootstock,grafts,Tag 30,Tag 90\n")))
        .hasMessageContaining("\"counts\": [{\"days\":30,\"alive\":\"Tag 30\"},");
  }
}
