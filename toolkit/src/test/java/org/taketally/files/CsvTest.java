package org.taketally.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Spreadsheets find no formula in what is written, and nothing typed is lost by it. */
class CsvTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "=HYPERLINK(\"http://x\",\"y\")",
        "+1+1",
        "-2+3+cmd|' /C calc'!A0",
        "@SUM(1)",
        "\t=1+1",
        "\r=1+1",
        "\n=1+1",
        "'=1+1",
        "''=1+1",
        "\uFF1D1+1",
        "-Orrin",
        "+61 x"
      })
  void formulas_become_text_and_come_back(String typed) {
    assertThat(Formulas.neutral(typed)).isEqualTo("'" + typed);
    assertThat(Formulas.typed(Formulas.neutral(typed))).isEqualTo(typed);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Orrin",
        "-0.5",
        "+3",
        "-1.5E-4",
        "-3,5",
        "-",
        "+61 400 123",
        "-12 %",
        "'t Zand",
        "a=b"
      })
  void all_else_stays_as_it_is(String cell) {
    assertThat(Formulas.neutral(cell)).isEqualTo(cell);
    assertThat(Formulas.typed(cell)).isEqualTo(cell);
  }

  @Test
  void any_cell_comes_back_as_typed() {
    Random random = new Random(16);
    String signs = "'=+-@\t\r\n\uFF1D a1.,\"%";
    for (int i = 0; i < 20_000; i++) {
      StringBuilder typed = new StringBuilder();
      for (int k = random.nextInt(6); k > 0; k--) {
        typed.append(signs.charAt(random.nextInt(signs.length())));
      }
      String neutral = Formulas.neutral(typed.toString());
      assertThat(neutral).doesNotMatch("(?s)[=@\\t\\r\\n\uFF1D].+");
      assertThat(Formulas.typed(neutral)).isEqualTo(typed.toString());
    }
  }

  @Test
  void headings_are_cells_too() {
    assertThat(Csv.text(List.of(List.of("=a", "b"), List.of("c,d", "-1"))))
        .isEqualTo("'=a,b\n\"c,d\",-1\n");
  }
}
