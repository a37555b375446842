package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

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
}
