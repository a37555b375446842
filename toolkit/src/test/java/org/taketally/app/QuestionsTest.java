package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.DictionaryProposal;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;

/** What a proposed dictionary leaves open is asked one by one, and the answers are written in. */
class QuestionsTest {

  @TempDir private Path folder;
  private final StringWriter said = new StringWriter();

  private GraftRecords asked(Path file, String typed) throws IOException {
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    new Questions(new BufferedReader(new StringReader(typed)), new PrintWriter(said)).ask(proposal);
    left = proposal.questions();
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 25))
        .withDictionary(SheetDictionary.parse("asked.json", proposal.json()))
        .read(file);
  }

  private List<String> left;

  @Test
  void answers_settle_days_words_and_blanks() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("sheet.csv"),
            """
            Variety,Stock,graft_date,took?
            Orrin,Pellin,04/03/2026,yes
            Orrin,Varric,05/03/2026,perhaps
            Orrin,Varric,06/03/2026,
            Corvane,Varric,06/03/2026,no
            """);
    GraftRecords records = asked(file, "9\nx\n1\n3\n1\n");
    assertThat(said.toString())
        .contains("found \"9\", expected a number from 1 to 2", "found \"x\"", "d/M/yyyy (3 of 3)");
    assertThat(left).isEmpty();
    assertThat(records.frame().dateColumn("graft_date").get(0)).isEqualTo(LocalDate.of(2026, 3, 4));
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(records.takes()).isEqualTo(1);
  }

  @Test
  void enter_leaves_a_question_open_and_the_end_of_input_all() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("sheet.csv"),
            "cultivar,rootstock,took?\nA,B,perhaps\nA,C,maybe\nA,B,yes\n");
    GraftRecords records = asked(file, "\n1\n");
    assertThat(left).hasSize(1).first().asString().contains("\"perhaps\"");
    assertThat(records.setAside().size()).isEqualTo(1);
    asked(file, "");
    assertThat(left).hasSize(2);
  }

  @Test
  void the_layout_is_asked_for_too() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("sheet.csv"),
            """
            record,Variety,Stock,grafter,graft_date,grafts,alive 30 d,alive 90 d
            a,Orrin,Pellin,Ann,14/03/2026,10,9,8
            b,,Varric,Bo,03/15/2026,10,8,7
            c,,,Bo,03/16/2026,10,7,6
            d,Corvane,Varric,Ann,17/03/2026,10,6,5
            """);
    GraftRecords records = asked(file, "1\n1\n1\n1\n1\n1\n");
    assertThat(said.toString())
        .contains("fill_down", "read differently by person", "counts at stated days");
    assertThat(records.grafts()).isEqualTo(40);
    assertThat(records.takes()).isEqualTo(26);
    assertThat(records.frame().stringColumn("cultivar").asList())
        .containsExactly("Orrin", "Orrin", "Orrin", "Corvane");
    assertThat(records.frame().dateColumn("graft_date").asList())
        .containsExactly(
            LocalDate.of(2026, 3, 14),
            LocalDate.of(2026, 3, 15),
            LocalDate.of(2026, 3, 16),
            LocalDate.of(2026, 3, 17));
  }
}
