package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is said beforehand of the time a page takes holds what was measured. */
class HowLongTest {

  private static final Path MEASURED =
      Path.of(System.getProperty("taketally.root", "..")).resolve("docs/performance.md");

  private static final long DEMO_ROWS = 3043;

  private static long[] range(String said) {
    Matcher range = Pattern.compile("about (\\d+) to (\\d+) seconds").matcher(said);
    assertThat(range.find()).as(said).isTrue();
    return new long[] {Long.parseLong(range.group(1)), Long.parseLong(range.group(2))};
  }

  @Test
  void the_forecast_of_the_demo_starts_at_what_performance_md_measured() throws IOException {
    Matcher measured =
        Pattern.compile("`summary` and `demo` ([\\d.]+) s").matcher(Files.readString(MEASURED));
    assertThat(measured.find()).as("the time of the demo in docs/performance.md").isTrue();
    double seconds = Double.parseDouble(measured.group(1));

    long[] said = range(HowLong.forecast(DEMO_ROWS, 1));

    assertThat((double) said[0])
        .as("change HowLong.LEAST and A_THOUSAND with what was measured")
        .isBetween(0.8 * seconds, 1.05 * seconds);
    assertThat((double) said[1]).isGreaterThan(1.5 * seconds);
  }

  @Test
  void a_busy_machine_and_more_rows_take_longer() {
    long[] quiet = range(HowLong.forecast(500, 1));
    assertThat(range(HowLong.forecast(500, 3))[0]).isEqualTo(quiet[0]);
    assertThat(range(HowLong.forecast(500, 3))[1]).isEqualTo(3 * quiet[0]);
    assertThat(range(HowLong.forecast(900, 1))[0]).isGreaterThan(quiet[0]);
    assertThat(HowLong.forecast(100_000, 1)).contains("minutes").doesNotContain("seconds");
    assertThat(HowLong.forecast(9000, 6)).contains("about half to 2 minutes");
  }

  @Test
  void says_what_is_left_and_how_long_all_took() {
    StringWriter out = new StringWriter();
    HowLong howLong = new HowLong(new PrintWriter(out));
    howLong.writing();
    howLong.done();
    assertThat(out.toString()).contains("about 1 second more", "done in 0 seconds");
  }
}
