package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.answers.verdict.VerdictRules.Evidence;

class VerdictRulesTest {

  @ParameterizedTest
  @CsvSource({
    "true,  false, false, false, NO_PRACTICAL_DIFFERENCE",
    "true,  true,  false, false, LESS_THAN_YOU_CARE_ABOUT",
    "false, false, false, false, CANT_TELL_YET",
    "false, true,  false, false, DIFFERS_UNSETTLED",
    "false, true,  true,  false, MATTERS",
    "false, false, true,  false, MATTERS",
    "true,  false, false, true,  DEPENDS_ON_CULTIVAR",
    "true,  true,  false, true,  DEPENDS_ON_CULTIVAR",
    "false, false, false, true,  DEPENDS_ON_CULTIVAR",
    "false, true,  false, true,  DEPENDS_ON_CULTIVAR",
    "false, true,  true,  true,  MATTERS",
  })
  void each_word_has_its_evidence(
      boolean allEquivalent, boolean differ, boolean beyond, boolean depends, Verdict verdict) {
    assertThat(VerdictRules.verdict(new Evidence(allEquivalent, differ, beyond, depends)))
        .isEqualTo(verdict);
  }

  /** Entangled records are turned away before the rules: {@link FactorVerdictCalculator}. */
  @Test
  void every_word_but_entangled_is_reached() {
    Set<Verdict> reached = EnumSet.noneOf(Verdict.class);
    for (int bits = 0; bits < 16; bits++) {
      reached.add(
          VerdictRules.verdict(
              new Evidence((bits & 1) > 0, (bits & 2) > 0, (bits & 4) > 0, (bits & 8) > 0)));
    }
    assertThat(reached).isEqualTo(EnumSet.complementOf(EnumSet.of(Verdict.ENTANGLED)));
  }
}
