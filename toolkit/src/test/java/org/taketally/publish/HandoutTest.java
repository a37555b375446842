package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.figure.SvgReader;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.HandoutWords;
import org.taketally.wording.season.SeasonWords;

/** The sheet to print says what was found, how sure it is, and what not to conclude. */
class HandoutTest {

  private static final HandoutWords WORDS = SeasonWords.in(Language.ENGLISH).handout();

  @TempDir private Path folder;

  private String handout() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1).replace("Cv0", "<b>Cv0</b>"));
    SummaryOptions options = SummaryOptions.defaults().circle("Halden Bay growers' circle");
    return SeasonSummary.of(records, CountedAnswers.of(records), options).handout();
  }

  @Test
  void says_what_was_found_how_sure_and_what_not_to_conclude() {
    assertThat(handout())
        .contains("Halden Bay growers&#39; circle: grafting season 2024")
        .contains("What was found", "Does the rootstock matter?", "What to do differently")
        .contains(
            "Each cultivar, all else equal", "How sure", "&quot;Can&#39;t tell&quot; is a result")
        .contains("What not to conclude", "need not be what caused it")
        .contains("Take care", "follow the label", "ask your plant-health authority");
  }

  @Test
  void is_well_formed_whatever_was_typed_and_needs_nothing_from_elsewhere() {
    String html = handout();

    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(html)
        .contains("&lt;b&gt;Cv0&lt;/b&gt;")
        .doesNotContain("<b>", "<script", "src=", "http", "@import", "url(", "<link");
  }

  @Test
  void a_long_list_of_cultivars_keeps_both_ends_and_says_how_many_are_left_out() {
    List<String> sixty = Handout.cultivars(WORDS, Optional.of(cultivars(60)), List.of());

    assertThat(sixty)
        .hasSize(37)
        .startsWith("Cv0 50\u00a0(40\u00a0to\u00a060)")
        .endsWith("Cv59 50\u00a0(40\u00a0to\u00a060)");
    assertThat(sixty.get(18)).isEqualTo("24 cultivars in between stand on the season page.");
    assertThat(Handout.cultivars(WORDS, Optional.of(cultivars(42)), List.of())).hasSize(42);
    assertThat(Handout.cultivars(WORDS, Optional.empty(), List.of())).isEmpty();
  }

  /** What else stands on the sheet takes room from the list, line by line, at both ends. */
  @Test
  void long_points_leave_room_for_fewer_cultivars() {
    List<String> points = List.of("x".repeat(90 * 16));

    List<String> fewer = Handout.cultivars(WORDS, Optional.of(cultivars(60)), points);

    assertThat(fewer).hasSize(12 + 1 + 12).startsWith("Cv0 50\u00a0(40\u00a0to\u00a060)");
    assertThat(fewer).endsWith("Cv59 50\u00a0(40\u00a0to\u00a060)");
    assertThat(fewer.get(12)).startsWith("36 cultivars");
  }

  private static Difficulty cultivars(int count) {
    List<CultivarTake> all = new ArrayList<>();
    Interval range = new Interval(0.4, 0.6, 0.95);
    Estimate half = new Estimate(0.5, range);
    for (int i = 0; i < count; i++) {
      all.add(
          new CultivarTake(
              "Cv" + i,
              new TakeCount(20, 40),
              range,
              half,
              half,
              0,
              new Estimate(i + 1, new Interval(1, count, 0.95)),
              0.25,
              Band.CANT_TELL));
    }
    return new Difficulty(
        all,
        List.of(),
        new TakeCount(20L * count, 40L * count),
        Optional.empty(),
        AnswerOptions.defaults());
  }
}
