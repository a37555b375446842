package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;

/** Sheets that count the grafts, the living and the dead: the three are held together. */
class LivingAndDeadTest {

  private static final String SHEET =
      """
      Variety,Stock,Made,Alive,Dead
      Orrin,Pellin,20,12,5
      Orrin,Halden,10,7,3
      Bexley,Halden,10,8,4
      Bexley,Pellin,10,,4
      Bexley,Varric,6,6,
      Bexley,Varric,1,0,2 later
      """;
  private static final String DICTIONARY =
      """
      {"columns": {"cultivar": "Variety", "rootstock": "Stock", "grafts": "Made",
       "takes": {"from": "Alive", "dead": "Dead"}}}
      """;

  @TempDir private Path folder;

  private GraftRecords read(String text, String dictionary) throws IOException {
    return RecordsReader.defaults()
        .withDictionary(SheetDictionary.parse("d.json", dictionary))
        .read(Files.writeString(folder.resolve("sheet.csv"), text));
  }

  private static List<String> said(GraftRecords records) {
    return records.problems().stream()
        .filter(problem -> problem.column().equalsIgnoreCase("dead"))
        .map(problem -> problem.sentence().substring(problem.file().length()))
        .filter(sentence -> sentence.startsWith(" line"))
        .toList();
  }

  @Test
  void what_is_neither_living_nor_dead_is_asked_for() throws IOException {
    GraftRecords records = read(SHEET, DICTIONARY);
    assertThat(records.setAside().size()).isZero();
    assertThat(records.grafts()).isEqualTo(47);
    assertThat(records.takes()).isEqualTo(33);
    assertThat(records.frame().columnNames()).doesNotContain("Dead");
    assertThat(said(records))
        .containsExactlyInAnyOrder(
            " line 2, column Dead: found \"12 living and 5 dead of 20 grafts\", expected"
                + " living and dead that come to 20; 3 are neither; what isn't living counts as"
                + " failed; correct the count that is wrong, or write 17 under grafts if nobody"
                + " looked at the other 3",
            " line 4, column Dead: found \"8 living and 4 dead of 10 grafts\", expected"
                + " living and dead that come to 10; 2 are too many; read as 8 of 10 alive;"
                + " correct the count that is wrong",
            " line 5, column Dead: found \"4 dead of 10 grafts, and no count of the"
                + " living\", expected the living beside the dead; the row counts as unassessed;"
                + " write how many were alive",
            " line 7, column Dead: found \"2 later\", expected a whole number of dead;"
                + " correct it; not held against the grafts until then");
  }

  /** Nothing is read by a heading nobody named, but it is asked. */
  @Test
  void a_heading_of_the_dead_that_nobody_named_is_asked_too() throws IOException {
    GraftRecords records = read("cultivar,rootstock,grafts,takes,dead\nA,B,20,12,5\n", "{}");
    assertThat(records.takes()).isEqualTo(12);
    assertThat(said(records)).hasSize(1).first().asString().contains("3 are neither");
  }

  @Test
  void the_dead_are_proposed_beside_grafts_and_living() throws IOException {
    Path file = Files.writeString(folder.resolve("kept.csv"), SHEET);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).contains("\"dead\": \"Dead\"");
    assertThat(read(SHEET, proposal.json()).takes()).isEqualTo(33);
  }

  /** What was set aside for another fault is held together again when it is read anew. */
  @Test
  void rows_set_aside_and_read_again_are_held_together() throws IOException {
    GraftRecords first = read(SHEET.replace("20,12,5", "20,x12,5"), DICTIONARY);
    assertThat(first.setAside().size()).isEqualTo(1);
    String repaired = first.setAside().csv().replace("x12", "12");
    assertThat(said(read(repaired, DICTIONARY))).hasSize(1).first().asString().contains("3 are");
  }

  /** Grafts nobody saw were proposed to be takes, beside a column of the living. */
  @Test
  void another_column_of_counts_may_be_the_living() throws IOException {
    String text =
        "Variety,Stock,Made,Doing well,Dead\nOrrin,Pellin,20,12,5\nBexley,Halden,20,15,5\n";
    Path file = Files.writeString(folder.resolve("kept.csv"), text);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("does \"Doing well\" count the living?");
    proposal.open().get(0).settle(0);
    GraftRecords records = read(text, proposal.json());
    assertThat(records.takes()).isEqualTo(27);
    assertThat(said(records)).hasSize(1).first().asString().contains("3 are neither");
  }
}
