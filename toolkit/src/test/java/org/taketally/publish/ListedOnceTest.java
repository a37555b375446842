package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** A long list stands on a page once: no table or figure repeats the lines of another. */
class ListedOnceTest {

  private static final Path DEMO =
      Path.of(System.getProperty("taketally.root", "..")).resolve("datasets/halden-bay-avocado");

  private final GraftRecords records = RecordsReader.defaults().readFolder(DEMO, "grafts-*.csv");
  private final SeasonSummary summary =
      SeasonSummary.of(records, CountedAnswers.of(records), SummaryOptions.defaults());

  private List<String> cultivars() {
    return records.frame().stringColumn("cultivar").unique().asList();
  }

  private static long times(String text, String regex) {
    return Pattern.compile(regex).matcher(text).results().count();
  }

  @Test
  void each_of_24_cultivars_heads_one_line_of_the_page_and_no_figure_lists_them_again() {
    String page = summary.markdown();
    String html = summary.html();
    assertThat(cultivars()).hasSize(24);
    for (String cultivar : cultivars()) {
      assertThat(times(page, "(?m)^\\| " + cultivar + " \\|")).as(cultivar).isEqualTo(1);
      assertThat(times(html, "<th scope=\"row\"[^>]*>" + cultivar + "</th>"))
          .as(cultivar)
          .isEqualTo(1);
      assertThat(times(html, "<text[^>]*>(?:<tspan[^>]*>)?" + cultivar + "<"))
          .as("in figures: " + cultivar)
          .isZero();
    }
  }

  @Test
  void each_of_24_cultivars_stands_once_in_the_list_of_the_handout() {
    String sheet = summary.handout();
    for (String cultivar : cultivars()) {
      assertThat(times(sheet, "<li>" + cultivar + " \\d+\u00a0\\(")).as(cultivar).isEqualTo(1);
    }
  }
}
