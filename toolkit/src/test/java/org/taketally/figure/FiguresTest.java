package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.Estimate;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.verdict.MarginCostCalculator;
import org.taketally.figure.SvgReader.TextBox;
import org.taketally.terms.Interval;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class FiguresTest {

  /** Every kind of figure, in both sizes, from short and long lists. */
  static Map<String, String> all() {
    Map<String, String> figures = new TreeMap<>();
    for (FigureSize size : FigureSize.values()) {
      for (int cultivars : new int[] {1, 2, 24, 200}) {
        figures.put(
            size + " difficulty " + cultivars,
            Figures.difficulty(SampleAnswers.difficulty(cultivars), size));
      }
      for (int cultivars : new int[] {3, 40, 60}) {
        figures.put(
            size + " long names " + cultivars,
            Figures.difficulty(SampleAnswers.longNames(cultivars), size));
      }
      for (boolean bad : new boolean[] {false, true}) {
        figures.put(
            size + " rootstock " + bad,
            Figures.rootstockDifferences(SampleAnswers.rootstock(bad), size));
      }
      figures.put(size + " movers", Figures.importance(SampleAnswers.whatMovesTake(), size));
      figures.put(size + " storage", Figures.takeCurve(SampleAnswers.storageCurve(), size));
      figures.put(size + " pairings", Figures.pairings(SampleAnswers.pairings(), size));
      figures.put(size + " grafters", Figures.grafters(SampleAnswers.grafters(), size));
      LateLoss loss = SampleAnswers.lateLoss();
      figures.put(size + " late loss", Figures.lateLoss(loss, size));
      figures.put(
          size + " late loss together",
          Figures.lateLoss(
              new LateLoss(
                  loss.all(),
                  List.of(),
                  loss.rounds(),
                  loss.roundsApart(),
                  loss.firstFrom(),
                  loss.firstTo(),
                  loss.countedOnce(),
                  loss.dispersion(),
                  loss.options()),
              size));
      figures.put(
          size + " late loss by cultivar",
          Figures.lateLossByLevel(loss, loss.factors().get(1), size));
      figures.put(
          size + " entanglement",
          Figures.confounding(SampleAnswers.rootstock(false).type().confounding(), size));
      figures.put(
          size + " entangled",
          Figures.confounding(
              new Confounding(
                  "rootstock",
                  List.of(
                      new Confounding.Group(List.of("Pellin"), List.of("Orrin"), 40),
                      new Confounding.Group(List.of("Ostrey"), List.of("Linnock"), 50)),
                  0,
                  List.of(),
                  90),
              size));
      figures.put(
          size + " margin cost", Figures.marginCost(MarginCostCalculator.of(4, 0.61, 0.1), size));
      figures.put(
          size + " margin cost low",
          Figures.marginCost(MarginCostCalculator.of(900, 0.12, 0.1), size));
      figures.put(size + " contrasts", Figures.of(SampleAnswers.contrasts(), size));
      figures.put(size + " own ranges", ownRanges().svg(size));
      figures.put(
          size + " own ranges alone", RangeChart.of("One").withRange("a", 3, 3, 3).svg(size));
      figures.put(size + " own lines", ownLines().svg(size));
      figures.put(size + " calibration", Figures.calibration(SampleAnswers.checks(), size));
    }
    return figures;
  }

  private static RangeChart ownRanges() {
    return RangeChart.of("Take by bench, <own> statement")
        .withAxis("points above the bench by the door", Scale.POINTS)
        .withBand(-0.1, 0.1, "within 10 points")
        .withRange("bench under the long south window", 0.04, -0.02, 0.11)
        .withRange("back", -0.12, -0.2, -0.03)
        .withNote("From 412 grafts of one season.");
  }

  private static LineChart ownLines() {
    double[] days = {0, 3, 6, 9, 12};
    return LineChart.of("Take after storage")
        .withAxes("days in store", "take", Scale.PERCENT)
        .withLine("expected, dormant", days, new double[] {0.8, 0.78, 0.71, 0.6, 0.5})
        .withLine("expected, swelling", days, new double[] {0.9, 0.85, 0.7, 0.4, 0.2})
        .withRanges(
            "counted",
            new double[] {1, 7},
            new double[] {0.82, 0.66},
            new double[] {0.7, 0.5},
            new double[] {0.9, 0.8})
        .withNote("From 96 grafts.");
  }

  @Test
  void charts_of_ones_own_say_what_they_lack() {
    assertThatThrownBy(() -> RangeChart.of("x").svg())
        .hasMessage("the chart has no lines yet: withRange(name, value, low, high)");
    assertThatThrownBy(() -> RangeChart.of("x").withRange("a", 1, 2, 3))
        .hasMessage("\"a\" needs low <= value <= high, got 2.0, 1.0 and 3.0");
    assertThatThrownBy(() -> LineChart.of("x").withLine("a", new double[2], new double[3]))
        .hasMessage("\"a\" needs 2 or more places and as many heights, got 2 and 3");
    assertThatThrownBy(
            () -> LineChart.of("x").withPoints("a", new double[1], new double[] {Double.NaN}))
        .hasMessage("\"a\" has a value that is no number; leave it out");
  }

  @Test
  void a_figure_is_saved_by_one_call_as_the_name_of_the_file_says(@TempDir Path folder)
      throws IOException {
    Path svg = Figures.save(SampleAnswers.contrasts(), folder.resolve("contrasts.svg"));
    assertThat(Files.readString(svg)).isEqualTo(Figures.of(SampleAnswers.contrasts()));
    Path png = Figures.save(ownLines().svg(), folder.resolve("Lines.PNG"));
    var picture = javax.imageio.ImageIO.read(png.toFile());
    assertThat(picture.getWidth()).isEqualTo(1440);
    assertThatThrownBy(() -> Figures.save(ownLines().svg(), folder.resolve("lines.pdf")))
        .hasMessage("\"lines.pdf\" must end in .svg or .png");
    assertThatThrownBy(() -> Figures.of(SampleAnswers.counts()))
        .hasMessage("TakeCounts has no figure");
  }

  @Test
  void the_cost_of_the_margin_asked_about_is_drawn_among_the_usual_drops() {
    String svg = Figures.marginCost(MarginCostCalculator.of(4, 0.8, 0.07), FigureSize.WIDE);
    assertThat(svg).contains("7 points less, 73 %", "5 points less, 75 %", "20 points less, 60 %");
  }

  @Test
  void each_is_well_formed_and_says_what_it_is() {
    all()
        .forEach(
            (name, svg) -> {
              Document document = SvgReader.parse(svg);
              Element root = document.getDocumentElement();
              assertThat(root.getAttribute("role")).as(name).isEqualTo("img");
              for (String id : root.getAttribute("aria-labelledby").split(" ")) {
                assertThat(svg).as(name).contains("id=\"" + id + "\"");
              }
              assertThat(SvgReader.elements(document, "desc").get(0).getTextContent())
                  .as(name)
                  .matches("(?s).*\\d.*")
                  .endsWith(".");
            });
  }

  @Test
  void no_text_leaves_the_sheet_or_covers_another() {
    all()
        .forEach(
            (name, svg) -> {
              Document document = SvgReader.parse(svg);
              String[] box = document.getDocumentElement().getAttribute("viewBox").split(" ");
              List<TextBox> texts = SvgReader.texts(document);
              for (int i = 0; i < texts.size(); i++) {
                TextBox text = texts.get(i);
                assertThat(text.left()).as(name + text).isGreaterThanOrEqualTo(0);
                assertThat(text.right()).as(name + text).isLessThan(Double.parseDouble(box[2]));
                assertThat(text.bottom()).as(name + text).isLessThan(Double.parseDouble(box[3]));
                for (TextBox other : texts.subList(i + 1, texts.size())) {
                  assertThat(text.meets(other)).as(name + " " + text + other).isFalse();
                }
              }
            });
  }

  /** Marks stand beside names and results, never on them, and inside the sheet. */
  @Test
  void no_mark_covers_a_text_or_leaves_the_sheet() {
    all()
        .forEach(
            (name, svg) -> {
              Document document = SvgReader.parse(svg);
              String[] box = document.getDocumentElement().getAttribute("viewBox").split(" ");
              List<TextBox> texts = SvgReader.texts(document);
              for (TextBox mark : SvgReader.marks(document)) {
                assertThat(mark.left()).as(name + mark).isGreaterThanOrEqualTo(0);
                assertThat(mark.right()).as(name + mark).isLessThan(Double.parseDouble(box[2]));
                assertThat(mark.bottom()).as(name + mark).isLessThan(Double.parseDouble(box[3]));
                for (TextBox text : texts) {
                  assertThat(mark.meets(text)).as(name + " " + mark + text).isFalse();
                }
              }
            });
  }

  /** A tick has no fill to be taken for "can't tell", and stands out above and below any mark. */
  @Test
  void a_counted_take_is_a_tick_and_no_second_ring() {
    Document document = SvgReader.parse(Figures.difficulty(SampleAnswers.difficulty(14)));
    long undecided =
        SampleAnswers.difficulty(14).cultivars().stream()
            .filter(c -> c.band() == Band.CANT_TELL)
            .count();

    long rings =
        SvgReader.elements(document, "circle").stream()
            .filter(circle -> circle.getAttribute("fill").equals(Palette.PAPER))
            .count();
    long ticks =
        SvgReader.elements(document, "line").stream()
            .filter(line -> line.getAttribute("x1").equals(line.getAttribute("x2")))
            .filter(line -> line.getAttribute("stroke").equals(Palette.INK))
            .count();

    assertThat(rings).as("rings: undecided, and one in the key").isEqualTo(undecided + 1);
    assertThat(ticks).as("ticks: one a cultivar, and one in the key").isEqualTo(14 + 1);
  }

  @Test
  void what_may_be_within_the_limit_or_not_is_only_probably_hard() {
    Difficulty difficulty = SampleAnswers.difficulty(24);
    List<Difficulty.CultivarTake> hard =
        difficulty.cultivars().stream().filter(c -> c.band() == Band.HARD).toList();
    long clearly = hard.stream().filter(c -> c.clear(difficulty.options().bands())).count();
    assertThat(clearly).isBetween(1L, hard.size() - 1L);

    List<String> texts = texts(Figures.difficulty(difficulty));

    assertThat(texts.get(0)).startsWith(clearly == 1 ? "One cultivar" : clearly + " cultivars");
    assertThat(texts.stream().filter(text -> text.endsWith(" %, probably hard")))
        .hasSize(hard.size() - (int) clearly);
  }

  @Test
  void axes_of_shares_lie_near_the_data_from_tenth_to_tenth() {
    assertThat(Shares.of(0.61, 0.78).rounded()).isEqualTo(new Shares(0.5, 0.9));
    assertThat(Shares.of(0.97, 0.99).rounded()).isEqualTo(new Shares(0.6, 1));
    assertThat(Shares.of(0, 0.02).rounded()).isEqualTo(new Shares(0, 0.4));
    assertThat(Shares.of(0.3, 0.7).with(Double.NaN).with(0.05).rounded().low()).isZero();
    assertThat(texts(Figures.takeCurve(SampleAnswers.storageCurve()))).doesNotContain("0 %");
  }

  @Test
  void nothing_is_turned_animated_scripted_or_fetched() {
    all()
        .forEach(
            (name, svg) ->
                assertThat(svg.replace("http://www.w3.org/2000/svg", ""))
                    .as(name)
                    .doesNotContain("rotate", "<script", "<animate", "href", "url(", "http"));
  }

  @Test
  void the_same_answer_gives_the_same_bytes() {
    assertThat(all()).isEqualTo(all());
  }

  @Test
  void user_text_is_shown_as_typed() {
    String svg = Figures.difficulty(SampleAnswers.difficulty(24));

    assertThat(texts(svg)).contains("Pell <dwarf>", "Wick & Lowe");
  }

  @Test
  void every_cultivar_shows_its_grafts_its_take_and_its_band() {
    List<String> texts = texts(Figures.difficulty(SampleAnswers.difficulty(14)));

    assertThat(texts).containsSubsequence("Orrin", "20", "28 %, hard");
    assertThat(texts).containsSubsequence("Wick & Lowe", "131", "43 %, can't tell");
    assertThat(texts).contains("grafts", "3 cultivars are clearly hard to get to take");
  }

  @Test
  void a_long_list_keeps_both_ends_and_says_how_many_it_left_out() {
    List<String> texts = texts(Figures.difficulty(SampleAnswers.difficulty(200)));

    assertThat(texts).contains("Orrin", "Wick & Lowe 28", "170 cultivars between are in the table");
  }

  @Test
  void pairs_are_turned_so_that_the_better_stock_comes_first() {
    List<String> texts = texts(Figures.rootstockDifferences(SampleAnswers.rootstock(true)));

    assertThat(texts).containsSubsequence("Marl 3 over Ossery seedling", "180 + 120", "differ");
    assertThat(texts).contains("Rootstock: matters", "within 10 points: about the same");
    assertThat(texts).doesNotContain("Ossery seedling over Marl 3");
  }

  @Test
  void the_factor_asked_about_stands_out_by_shape_and_by_words() {
    String svg = Figures.importance(SampleAnswers.whatMovesTake());

    assertThat(texts(svg)).contains("rootstock: the question", "1 point (1 to 2)");
    assertThat(svg).contains("Rootstock stands at place 8 of 8");
  }

  @Test
  void a_spread_of_nothing_has_no_range_of_nothing() {
    FactorImportance given = SampleAnswers.whatMovesTake();
    Importance one = given.factors().get(0);
    Estimate none = new Estimate(0, new Interval(0, 0.001, 0.95));
    Importance flat = new Importance("site", one.kind(), 3, none, "best", "worst", none, false);
    FactorImportance both =
        new FactorImportance(List.of(one, flat), given.tally(), given.options());

    assertThat(texts(Figures.importance(both)))
        .contains("under 1 point")
        .noneMatch(text -> text.contains("(0 to 0)"));
  }

  @Test
  void largest_mover_comes_first_whatever_the_order_given() {
    List<String> texts = texts(Figures.importance(SampleAnswers.whatMovesTake()));

    assertThat(texts).containsSubsequence("cultivar", "stock condition", "grafter", "method");
  }

  @Test
  void grafters_stay_behind_letters_and_the_figure_says_so() {
    List<String> texts = texts(Figures.grafters(SampleAnswers.grafters()));

    assertThat(texts)
        .contains("Grafter A", "Letters stand for people; names are shown only when asked for.");
  }

  private static List<String> texts(String svg) {
    return new ArrayList<>(
        SvgReader.texts(SvgReader.parse(svg)).stream().map(TextBox::text).toList());
  }
}
