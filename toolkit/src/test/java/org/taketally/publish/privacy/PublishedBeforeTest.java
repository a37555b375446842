package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;

/** The file kept beside a page: names in it steer nothing, and are known again. */
class PublishedBeforeTest {

  private static PublishedBefore named(String name) {
    Line line = new Line("cultivar", name, List.of(name, "2025"), Kind.LEVEL, name, 40, 30);
    return PublishedBefore.nothing().and(new EarlierPage(List.of(line)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Or\u202Erin",
        "\u2066Orrin",
        "=Or\u202Erin",
        "\u001b[2JOrrin",
        "Or\\u202Erin",
        "\rOrrin",
        "'=Orrin",
        "Orrin, \"early\""
      })
  void a_name_of_any_signs_is_known_again(String name) {
    assertThat(PublishedBefore.read(named(name).csv())).isEqualTo(named(name));
  }

  @Test
  void no_sign_that_turns_the_direction_or_steers_a_terminal_stands_in_the_file() {
    String csv = named("\u202EOr\u2067rin\u001b[2J\u200f").csv();
    assertThat(csv).contains("\\u202EOr\\u2067rin\\u001B[2J\\u200F");
    assertThat(csv.chars().allMatch(sign -> sign == '\n' || (sign >= ' ' && sign < 127))).isTrue();
  }

  private static EarlierPage page(Line... lines) {
    return new EarlierPage(List.of(lines));
  }

  private static Line all(long grafts, long takes, String... seasons) {
    return new Line("all", "", List.of(seasons), Kind.ALL, "", grafts, takes);
  }

  @Test
  void the_file_holds_each_line_of_each_page_by_its_number() {
    Line orrin = new Line("latest", "cultivar", List.of("2025"), Kind.LEVEL, "Orrin", 40, 30);
    Line others = new Line("latest", "cultivar", List.of("2025"), Kind.OTHERS, "", 30, 12);
    PublishedBefore before =
        PublishedBefore.nothing()
            .and(page(all(70, 42, "2024", "2025"), orrin, others))
            .and(page(all(90, 50, "")));

    assertThat(before.csv())
        .isEqualTo(
            """
            page,seasons,table,column,kind,level,grafts,takes
            1,2024 | 2025,all,,all,,70,42
            1,2025,latest,cultivar,level,Orrin,40,30
            1,2025,latest,cultivar,others,,30,12
            2,,all,,all,,90,50
            """);
    assertThat(PublishedBefore.read(before.csv())).isEqualTo(before);
  }

  @Test
  void the_same_page_again_adds_nothing_another_does() {
    PublishedBefore one = PublishedBefore.nothing().and(page(all(70, 42, "2025")));

    assertThat(one.and(page(all(70, 42, "2025")))).isEqualTo(one);
    assertThat(one.and(page(all(70, 43, "2025"))).pages()).hasSize(2);
  }

  @Test
  void a_page_is_about_every_season_of_its_lines_once() {
    assertThat(page(all(70, 42, "2024", "2025"), all(40, 30, "2025"), all(9, 3, "")).seasons())
        .containsExactly("2024", "2025", "");
  }

  @Test
  void a_line_holds_at_least_a_graft_and_no_more_takes_than_grafts() {
    assertThat(all(1, 0, "").takes()).isZero();
    assertThat(all(1, 1, "").takes()).isEqualTo(1);
    assertThatThrownBy(() -> all(1, 2, ""))
        .hasMessage("a published line must hold 0 to 1 takes, got 2");
    assertThatThrownBy(() -> all(1, -1, ""))
        .hasMessage("a published line must hold 0 to 1 takes, got -1");
    assertThatThrownBy(() -> all(0, 0, "")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void a_file_of_something_else_is_refused_with_what_was_expected() {
    assertThatThrownBy(() -> PublishedBefore.read("cultivar,grafts\nOrrin,40\n"))
        .hasMessage(
            "not a list of what was published: expected the columns page, seasons, table, column,"
                + " kind, level, grafts, takes as this program writes them");
  }
}
