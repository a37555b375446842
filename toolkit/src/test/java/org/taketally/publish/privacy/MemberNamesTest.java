package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody hides behind a second spelling of a name, and codes stay apart. */
class MemberNamesTest {

  private static MemberNames of(String... names) {
    return MemberNames.of(List.of(names));
  }

  @Test
  void one_person_spelt_several_ways_is_one_member() {
    MemberNames names = of("Maud", "maud ", "MAUD", "Maud.", "Tobin", "tobín");
    assertThat(names.count()).isEqualTo(2);
    assertThat(names.together())
        .containsExactly(List.of("Maud", "maud ", "MAUD", "Maud."), List.of("Tobin", "tobín"));
    assertThat(names.nobody()).isEmpty();
  }

  @Test
  void slips_and_names_cut_short_may_be_one() {
    assertThat(of("Bertrand", "Bertrnad").count()).isEqualTo(1);
    assertThat(of("Bert.", "Bertrand").count()).isEqualTo(1);
    assertThat(of("Ann", "Anna", "Tobin").count()).isEqualTo(2);
  }

  @Test
  void a_slip_of_a_slip_joins_all_three() {
    MemberNames names = of("Bertrandine", "Bertrandina", "Bertrndina");
    assertThat(names.count()).isEqualTo(1);
    assertThat(names.together()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Hand A,Hand B,Hand C", "GR-1,GR-2,GR-3", "GR/1,GR/2,GR/3", "A,B,C"})
  void letters_and_numbers_given_keep_people_apart(String all) {
    assertThat(of(all.split(",")).count()).isEqualTo(3);
  }

  @Test
  void people_of_one_family_and_initials_stay_apart() {
    assertThat(of("Maud Hale", "Tobin Hale", "M. Hale", "T. Hale").count()).isEqualTo(4);
    assertThat(of("Hale, Maud", "Hale, Tobin").count()).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "unknown",
        "?",
        "-",
        "n/a",
        "Various",
        "others",
        "team",
        "Maud & Tobin",
        "Maud + a friend",
        "Maud/Tobin",
        "Maud and Tobin",
        "Tobin, Maud",
        "with Maud"
      })
  void nobody_in_particular_and_several_people_are_no_member(String name) {
    MemberNames names = of("Maud", "Tobin", name);
    if (name.equals("with Maud")) {
      assertThat(names.count()).as("one person's name, with a word before it").isEqualTo(3);
    } else {
      assertThat(names.count()).isEqualTo(2);
      assertThat(names.nobody()).containsExactly(name);
    }
  }

  /** What each of two people could take off a page that counted spellings. */
  @Test
  void two_people_spelt_six_ways_get_no_page_with_counts() {
    Circle circle = new Circle();
    String[] spellings = {"Ann", "ann", "ANN", "Ann.", "Bo", "bo", "unknown", "Ann&Bo"};
    for (String spelling : spellings) {
      circle.row(spelling + " s1 Orrin r1", 12, 20);
    }
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    assertThat(evidence.members(evidence.all())).isEqualTo(2);
    assertThat(evidence.unnamedGrafts()).isEqualTo(40);
    assertThat(evidence.allows(evidence.all(), PrivacyRule.usual())).isFalse();
    assertThat(evidence.memberGroups()).hasSize(2);
    assertThat(new HashSet<>(evidence.namedGroups()))
        .as("nor can a spelling be asked about: two members, nobody, and all")
        .hasSize(4);
  }

  @Test
  void records_by_nobody_in_particular_name_no_member() {
    Circle circle = new Circle().row("various s1 Orrin r1", 5, 10).row("? s1 Orrin r1", 5, 10);
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    assertThat(evidence.namesMembers()).isFalse();
    assertThat(evidence.unnamedGrafts()).isEqualTo(20);
  }
}
