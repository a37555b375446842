package org.taketally.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.Table;

class AnswerTableTest {

  private static final AnswerTable TABLE =
      AnswerTable.of(
              "example",
              "Cultivars <first>",
              AnswerColumn.CULTIVAR,
              AnswerColumn.GRAFTS,
              AnswerColumn.TAKE,
              AnswerColumn.DIFFERENCE,
              AnswerColumn.RANK,
              AnswerColumn.THIN)
          .row("Orrin, \"old\"", 4782, 0.634, -0.0412, 2.5, true)
          .row("Péll & Co", 3L, Double.NaN, null, 1.0, false)
          .build();

  @Test
  void text_aligns_names_left_and_numbers_right() {
    assertThat(TABLE.toText())
        .isEqualTo(
            """
            Cultivars <first>
            Cultivar      Grafts  Take  Difference (points)   Rank  Thin
            Orrin, "old"   4,782  63 %                 -4.1  2.500   yes
            Péll & Co          3                                 1    no
            """);
  }

  /** Pages of answers and notebooks hold these tables as they are. */
  @Test
  void signs_that_steer_or_turn_stay_in_no_form_that_is_shown() {
    AnswerTable table =
        AnswerTable.of("example", "A\u202Eb", AnswerColumn.CULTIVAR)
            .row("C\u001b[31m\u2066d's")
            .build();
    assertThat(table.toHtml())
        .contains("<caption>A\uFFFDb</caption>")
        .contains("<td>C\uFFFD[31m\uFFFDd's</td>");
    assertThat(table.toText()).contains("C\\u001B[31m\\u2066d's");
  }

  @Test
  void html_escapes_what_users_typed() {
    assertThat(TABLE.toHtml())
        .contains("<caption>Cultivars &lt;first&gt;</caption>")
        .contains("<td>Orrin, &quot;old&quot;</td>")
        .contains("<td>Péll &amp; Co</td>")
        .contains("<th scope=\"col\" title=\"grafts assessed\">Grafts</th>")
        .doesNotContain("<first>");
  }

  @Test
  void csv_keeps_full_precision_and_quotes() {
    assertThat(TABLE.toCsv())
        .isEqualTo(
            """
            cultivar,grafts,take,difference,rank,thin
            "Orrin, ""old""\",4782,0.634,-0.0412,2.5,true
            Péll & Co,3,,,1.0,false
            """);
  }

  @Test
  void json_has_camel_case_keys_and_nulls() {
    AnswerTable table =
        AnswerTable.of("x", "x", AnswerColumn.TAKE_LOW, AnswerColumn.BAND)
            .row(null, "hard")
            .build();
    JsonObject row = table.toJson().get(0).getAsJsonObject();
    assertThat(row.toString()).isEqualTo("{\"takeLow\":null,\"band\":\"hard\"}");
  }

  @Test
  void tablesaw_has_typed_columns_with_missing_values() {
    Table table = TABLE.toTablesaw();
    assertThat(table.columnNames())
        .containsExactly("cultivar", "grafts", "take", "difference", "rank", "thin");
    assertThat(table.longColumn("grafts").get(0)).isEqualTo(4782L);
    assertThat(table.doubleColumn("take").isMissing(1)).isTrue();
    assertThat(table.booleanColumn("thin").get(0)).isTrue();
  }

  @Test
  void refuses_a_value_of_the_wrong_kind() {
    assertThatThrownBy(() -> AnswerTable.of("x", "x", AnswerColumn.GRAFTS).row("many").build())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("column grafts holds COUNT, got many (String)");
  }

  @Test
  void refuses_a_row_of_the_wrong_length() {
    assertThatThrownBy(() -> AnswerTable.of("x", "x", AnswerColumn.GRAFTS).row(1, 2).build())
        .hasMessage("table x has 1 columns, got a row of 2");
  }
}
