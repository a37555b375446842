package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.notebook.jupyter.Browser;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.wording.language.Language;

/** The season page and its handout in a real browser: telephone, desk, paper, keyboard. */
class PagesInBrowserTest {

  private static final int PHONE = 390;
  private static final Path AXE =
      Path.of(System.getProperty("taketally.root", ".."))
          .resolve("toolkit/target/axe/node_modules/axe-core/axe.min.js");

  /** How many tables are wider than the room they have. */
  private static final String CUT =
      "[...document.querySelectorAll('.scroll')].filter(s => s.scrollWidth > s.clientWidth +"
          + " 1).length";

  @TempDir private Path folder;
  private Browser browser;

  @BeforeEach
  void open() throws Exception {
    boolean there = Files.exists(Browser.CHROMIUM) && Files.exists(Browser.DRIVER);
    if ("true".equals(System.getenv("CI"))) {
      assertThat(there).as("chromium and its driver, which CI installs").isTrue();
    }
    assumeTrue(there, "no chromium or chromedriver here: pages not tried in a browser");
    browser = Browser.open(folder);
  }

  @AfterEach
  void close() throws Exception {
    if (browser != null) {
      browser.quit();
    }
  }

  private void show(String html) throws Exception {
    browser.go(Files.writeString(folder.resolve("page.html"), html).toUri().toString());
  }

  private SeasonSummary summary(Language language) {
    GraftRecords records =
        Sheets.read(
            folder, Sheets.circle(1).replace("Cv0", "Cultivar with a name of forty letters!!"));
    return SeasonSummary.of(
        records, CountedAnswers.of(records), SummaryOptions.defaults().language(language));
  }

  private void width(int pixels) throws Exception {
    JsonObject size = new JsonObject();
    size.addProperty("width", pixels);
    size.addProperty("height", 844);
    size.addProperty("deviceScaleFactor", 1);
    size.addProperty("mobile", false);
    browser.command("Emulation.setDeviceMetricsOverride", size);
  }

  /** Nothing reaches beyond the window, tables included, on a telephone and at a desk. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void nothing_is_cut_on_a_telephone_or_at_a_desk(Language language) throws Exception {
    SeasonSummary summary = summary(language);
    for (int pixels : new int[] {PHONE, 768, 1280}) {
      width(pixels);
      for (String html : new String[] {summary.html(), summary.handout()}) {
        show(html);
        assertThat(browser.value("document.documentElement.scrollWidth").getAsInt())
            .as("width of the page in a window of %d", pixels)
            .isLessThanOrEqualTo(pixels);
        if (pixels != 768) {
          assertThat(browser.value(CUT).getAsInt())
              .as("tables cut in a window of %d", pixels)
              .isZero();
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void the_handout_is_one_sheet_of_a4_or_letter(Language language) throws Exception {
    show(summary(language).handout());

    assertThat(pages(8.27, 11.69)).as("sheets of A4").isEqualTo(1);
    assertThat(pages(8.5, 11)).as("sheets of Letter").isEqualTo(1);
  }

  /** Names so long that every list of them is long. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void sixty_cultivars_of_forty_letters_fit_on_the_sheet_and_are_not_cut(Language language)
      throws Exception {
    GraftRecords records = Sheets.read(folder, Sheets.sixtyLongNames());
    SeasonSummary summary =
        SeasonSummary.of(
            records, CountedAnswers.of(records), SummaryOptions.defaults().language(language));
    show(summary.handout());
    assertThat(pages(8.27, 11.69)).as("sheets of A4").isEqualTo(1);
    assertThat(pages(8.5, 11)).as("sheets of Letter").isEqualTo(1);

    width(PHONE);
    show(summary.html());
    assertThat(browser.value("document.documentElement.scrollWidth").getAsInt())
        .isLessThanOrEqualTo(PHONE);
    assertThat(browser.value(CUT).getAsInt()).as("tables cut").isZero();
  }

  /** Figures and tables aren't cut, so they may leave room below; never half a sheet of it. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void no_printed_page_but_the_last_is_more_than_half_blank(Language language) throws Exception {
    Path demo = Path.of(System.getProperty("taketally.root", "..")).resolve("datasets");
    List<GraftRecords> sheets =
        List.of(
            RecordsReader.defaults().readFolder(demo.resolve("halden-bay-avocado"), "grafts-*.csv"),
            Sheets.read(folder, Sheets.circle(1)),
            Sheets.read(folder, Sheets.sixtyLongNames()));
    for (GraftRecords records : sheets) {
      show(
          SeasonSummary.of(
                  records, CountedAnswers.of(records), SummaryOptions.defaults().language(language))
              .html());
      for (double[] paper : List.of(new double[] {8.27, 11.69}, new double[] {8.5, 11})) {
        List<Double> blank = PrintedPages.blank(print(paper[0], paper[1]));
        assertThat(blank).hasSizeGreaterThan(2);
        assertThat(blank.subList(0, blank.size() - 1))
            .as("blank parts of pages %.2f inches wide", paper[0])
            .allSatisfy(part -> assertThat(part).isLessThan(0.5));
      }
    }
  }

  @Test
  void the_test_sees_a_page_that_is_half_blank() throws Exception {
    show(
        "<style>@page { margin: 1.6cm }</style><p>Top</p>"
            + "<p style='margin-top: 16cm; break-after: page'>Two thirds down</p><p>Next</p>");
    List<Double> blank = PrintedPages.blank(print(8.27, 11.69));
    assertThat(blank).hasSize(2);
    assertThat(blank.get(0)).isBetween(0.2, 0.4);
    assertThat(blank.get(1)).isGreaterThan(0.9);
  }

  private long pages(double width, double height) throws Exception {
    String text = new String(print(width, height), StandardCharsets.ISO_8859_1);
    return Pattern.compile("/Type /Page\\b").matcher(text).results().count();
  }

  private byte[] print(double width, double height) throws Exception {
    JsonObject paper = new JsonObject();
    paper.addProperty("paperWidth", width);
    paper.addProperty("paperHeight", height);
    String pdf = browser.command("Page.printToPDF", paper).get("data").getAsString();
    return Base64.getDecoder().decode(pdf);
  }

  @Test
  void nothing_is_fetched_and_the_keyboard_reaches_everything() throws Exception {
    show(summary(Language.ENGLISH).html());
    assertThat(browser.value("performance.getEntriesByType('resource').length").getAsInt())
        .as("files fetched beside the page")
        .isZero();

    String which = "a[href], summary, [tabindex='0']";
    browser.value(
        "[...document.querySelectorAll(\"" + which + "\")].forEach((e, i) => e.dataset.n = i)");
    int all = browser.value("document.querySelectorAll(\"" + which + "\").length").getAsInt();
    Set<String> reached = new TreeSet<>();
    for (int i = 0; i < all; i++) {
      browser.press(Browser.TAB);
      reached.add(browser.value("document.activeElement.dataset.n || ''").getAsString());
    }
    assertThat(reached).as("reached of %d by the tabulator", all).hasSize(all);
  }

  /** By axe-core, where it is: {@code npm install --prefix toolkit/target/axe axe-core}. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void axe_finds_no_violation(Language language) throws Exception {
    if ("true".equals(System.getenv("CI"))) {
      assertThat(AXE).as("axe-core, which CI installs").exists();
    }
    assumeTrue(
        Files.exists(AXE),
        "no axe-core here: npm install --prefix toolkit/target/axe axe-core has pages checked");
    SeasonSummary summary = summary(language);
    for (String html : new String[] {summary.html(), summary.handout()}) {
      show(html);
      for (int pixels : new int[] {PHONE, 1280}) {
        width(pixels);
        assertThat(violations()).as("in a window of %d", pixels).isEqualTo("[]");
      }
    }
  }

  private String violations() throws Exception {
    JsonObject script = new JsonObject();
    script.addProperty("expression", Files.readString(AXE) + ";0");
    browser.command("Runtime.evaluate", script);
    JsonObject run = new JsonObject();
    run.addProperty(
        "expression",
        "axe.run().then(r => JSON.stringify(r.violations.map(v => v.id + ': '"
            + " + v.nodes.map(n => n.target + ' ' + n.failureSummary).join('; '))))");
    run.addProperty("awaitPromise", true);
    run.addProperty("returnByValue", true);
    return browser
        .command("Runtime.evaluate", run)
        .getAsJsonObject("result")
        .get("value")
        .getAsString();
  }
}
