package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.ProblemKind;
import org.taketally.terms.Problem;

/** A mark for the name above is no name, and means one only where the dictionary says so. */
class DittoMarksTest {

  private static final String SHEET =
      """
      cultivar,rootstock,grafter,outcome
      Orrin,Pellin,Ann,taken
      ${ditto},Halden,Bo,failed
      Corvane,${ditto},Bo,taken
      Corvane,Halden,${ditto},taken
      """;

  @TempDir private Path folder;

  private GraftRecords read(String sheet, String dictionary) throws IOException {
    Path file = Files.writeString(folder.resolve("sheet.csv"), sheet);
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 25))
        .withDictionary(SheetDictionary.parse("d.json", dictionary))
        .read(List.of(file));
  }

  private static String marked(String ditto) {
    return SHEET.replace("${ditto}", "\"" + ditto.replace("\"", "\"\"") + "\"");
  }

  private static List<Problem> dittos(GraftRecords records) {
    return records.summary().groups().stream()
        .filter(group -> group.kind() == ProblemKind.DITTO_MARK)
        .flatMap(group -> group.first().stream())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"",
        "''",
        "-\"-",
        "- \" -",
        "〃",
        "”",
        "do.",
        "do",
        "Ditto",
        "idem",
        "id.",
        "as above",
        "see above",
        "dito",
        "wie oben"
      })
  void a_ditto_mark_is_no_name_and_each_is_said_with_its_place(String ditto) throws IOException {
    GraftRecords records = read(marked(ditto), "{}");
    assertThat(dittos(records)).extracting(Problem::line).containsExactlyInAnyOrder(3L, 4L, 5L);
    assertThat(dittos(records)).allMatch(problem -> problem.found().equals(ditto));
    assertThat(records.setAside().size()).isEqualTo(2);
    assertThat(records.frame().stringColumn("grafter").asList()).containsExactly("Ann", "");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"", "do.", "as above"})
  void a_ditto_mark_means_the_name_above_where_the_dictionary_says_so(String ditto)
      throws IOException {
    GraftRecords records =
        read(marked(ditto), "{\"fill_down\": [\"cultivar\", \"rootstock\", \"grafter\"]}");
    assertThat(dittos(records)).isEmpty();
    assertThat(records.frame().stringColumn("cultivar").asList())
        .containsExactly("Orrin", "Orrin", "Corvane", "Corvane");
    assertThat(records.frame().stringColumn("rootstock").asList())
        .containsExactly("Pellin", "Halden", "Halden", "Halden");
    assertThat(records.frame().stringColumn("grafter").asList())
        .containsExactly("Ann", "Bo", "Bo", "Bo");
  }

  @Test
  void a_mark_with_nothing_above_it_stays_one() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,outcome\nditto,Pellin,taken\nOrrin,Pellin,taken\n",
            "{\"fill_down\": [\"cultivar\"]}");
    assertThat(dittos(records)).extracting(Problem::line).containsExactly(2L);
  }

  @Test
  void who_is_called_so_may_be_named_in_the_dictionary() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,grafter,outcome\nOrrin,Pellin,Do,taken\nOrrin,Pellin,Ann,taken\n",
            "{\"columns\": {\"grafter\": {\"same\": {\"Do\": [\"Do\"]}}}}");
    assertThat(dittos(records)).isEmpty();
    assertThat(records.frame().stringColumn("grafter").asList()).containsExactly("Do", "Ann");
  }

  @Test
  void a_proposal_asks_about_ditto_marks_and_no_other_question_about_them() throws IOException {
    Path file = Files.writeString(folder.resolve("sheet.csv"), marked("\""));
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("ditto marks (\") stand under cultivar, rootstock, grafter", "\"fill_down\"");
    proposal.open().get(0).settle(0);
    assertThat(read(marked("\""), proposal.json()).setAside().size()).isZero();
  }

  /** Quotation marks within names are escaped, so that the entry can be copied. */
  @Test
  void an_entry_named_by_a_remedy_is_json_whatever_the_names() throws IOException {
    String sheet =
        "cultivar,rootstock,outcome\n"
            + "\"Orrin \"\"Early\"\"\",Pellin\\1,taken\n".repeat(3)
            + "Orrin Early,Pellin 1,taken\n";
    String remedy =
        read(sheet, "{}").problems().stream()
            .map(Problem::remedy)
            .filter(text -> text.contains("\"cultivar\": {\"same\""))
            .findFirst()
            .orElseThrow();
    String entry = "{" + remedy.substring(remedy.indexOf("\"cultivar\"")) + "}";
    assertThat(JsonParser.parseString(entry).getAsJsonObject().keySet())
        .containsExactly("cultivar");
    assertThat(
            read(sheet, "{\"columns\": " + entry + "}").frame().stringColumn("cultivar").asList())
        .containsOnly("Orrin \"Early\"");
    String asked = DictionaryProposal.of(List.of(folder.resolve("sheet.csv"))).questions().get(0);
    assertThat(asked).contains("\"same\": {\"Orrin \\\"Early\\\"\": [\"Orrin Early\"]}");
  }

  /**
   * Unquoted in a CSV file, it took the lines up to the next mark into one cell: a row was lost.
   */
  @Test
  void a_mark_typed_without_quotation_marks_around_it_is_refused_with_its_line()
      throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("typed.csv"),
            """
            cultivar,rootstock,grafter,grafts,takes
            Orrin,Pellin,Ann,10,7
            ",Halden,Ann,8,5
            ",Varric,Ann,9,4
            """);
    assertThatThrownBy(() -> RecordsReader.defaults().read(List.of(file)))
        .hasMessageContaining("typed.csv line 3: found \"a quotation mark that stands alone")
        .hasMessageContaining("write the name out, or do.");
  }

  @Test
  void a_note_of_several_lines_is_no_such_mark() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("notes.csv"),
            """
            cultivar,rootstock,grafts,takes,notes
            Orrin,Pellin,10,7,"late,
            but well"
            Orrin,Halden,10,7,", as above"
            """);
    assertThat(RecordsReader.defaults().read(List.of(file)).grafts()).isEqualTo(20);
  }
}
