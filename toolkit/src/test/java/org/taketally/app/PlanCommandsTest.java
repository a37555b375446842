package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Planning and ordering as typed: what is said, and the exit status. */
class PlanCommandsTest {

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments).said().flat();
  }

  private JsonObject json(Path file) throws IOException {
    return JsonParser.parseString(Files.readString(file)).getAsJsonObject();
  }

  @Test
  void size_says_grafts_for_a_difference_and_for_none() throws IOException {
    Path json = folder.resolve("size.json");
    CommandRun outcome = run("plan", "size", "--take", "80", "--other-take", "70", "--json", json);
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains("376 grafts on each stock, 752 in all")
        .contains("321 grafts on each stock, 642 in all");
    assertThat(json(json).getAsJsonObject("difference").get("firstGrafts").getAsInt())
        .isEqualTo(376);
  }

  @Test
  void beds_of_takes_near_all_or_none_are_said_to_be_rough() {
    String rough = "what is said of them is rough";
    assertThat(run("plan", "size", "--take", "95", "--bed", "20").out()).contains(rough);
    assertThat(run("plan", "size", "--take", "12", "--other-take", "5", "--bed", "20").out())
        .contains(rough);
    assertThat(run("plan", "size", "--take", "94", "--bed", "20").out()).doesNotContain(rough);
    assertThat(run("plan", "size", "--take", "98").out()).doesNotContain(rough);
  }

  @Test
  void numbers_that_next_cannot_use_are_named_with_their_option() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("past.csv"),
            "cultivar,rootstock,outcome\n"
                + "A,B,taken\nA,C,taken\nA,B,failed\nA,C,taken\n".repeat(9));
    assertUsage(run("plan", "next", sheet, "--cultivars", "0"), "'--cultivars': found \"0\"");
    assertUsage(run("plan", "next", sheet, "--most", "0"), "'--most': found \"0\"");
    assertUsage(run("plan", "next", sheet, "--trials", "-1"), "'--trials': found \"-1\"");
    assertUsage(run("plan", "next", sheet, "--trials", "3"), "found \"3\", expected 12 or more");
    CommandRun tooFew = run("plan", "next", sheet, "--most", "1");
    assertThat(tooFew.err()).contains("--most: found 1, expected");
  }

  @Test
  void size_says_when_no_number_of_grafts_helps() {
    CommandRun outcome =
        run(
            "plan",
            "size",
            "--take",
            "80",
            "--other-take",
            "70",
            "--bed",
            "20",
            "--most-beds",
            "4");
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("no number of grafts is enough. With 4 beds of each stock");
  }

  @Test
  void nonsense_is_refused_with_the_remedy() {
    assertUsage(run("plan", "size", "--take", "0"), "expected per cent from 1 to under 100");
    assertUsage(run("plan", "size", "--take", "80", "--power", "1.2"), "expected more than 5");
    assertUsage(run("plan", "size", "--take", "5"), "say --other-take");
    assertUsage(
        run("plan", "size", "--take", "80", "--shared-spread", "40"),
        "can't differ by 40 points about takes of 80 % and 70 %");
    assertUsage(
        run("plan", "size", "--take", "80", "--other-take", "80", "--shared-spread", "39"),
        "give at most 28");
    assertUsage(
        run("plan", "size", "--take", "80", "--bed", "20", "--most-beds", "1"),
        "at least 2 of each are needed");
    assertUsage(
        run(
            "plan",
            "layout",
            "--cultivars",
            "A",
            "--stocks",
            "X,Y",
            "--grafters",
            "G,H,I,J",
            "--days",
            "9",
            "--on-hand",
            "X=3,Y=3"),
        "use fewer days or grafters");
    assertUsage(
        run(
            "plan",
            "layout",
            "--cultivars",
            "A,B",
            "--stocks",
            "X,Y",
            "--grafters",
            "G",
            "--days",
            "3",
            "--suppose",
            "Z=50"),
        "no rootstock \"Z\" in this trial");
  }

  /** Typed values and options that can't be used are said, with what was expected. */
  @Test
  void what_cannot_be_used_is_refused() throws IOException {
    for (String days : List.of("01/03/2027", "2027-02-30", "2,3", "1000", "367", "0")) {
      assertUsage(
          layout("--days", days), "expected a whole number of days from 1 to 366, or dates");
    }
    assertUsage(layout("--days", "3", "--trials", "19"), "--trials needs --suppose");
    assertUsage(layout("--days", "3", "--trials", "3"), "found \"3\", expected 12 or more");
    assertUsage(layout("--days", "3", "--margin", "9"), "--margin needs --suppose");
    assertUsage(
        layout("--days", "3", "--on-hand", "X=40,X=50"), "--on-hand: found \"X\" twice, expected");
    assertUsage(
        run("plan", "size", "--take", "80", "--bed-spread", "5"), "--bed-spread needs --bed");
    assertUsage(
        run("plan", "size", "--take", "80", "--bed", "1000000000"),
        "--bed: found 1000000000, expected 1 to 10,000 grafts");
    assertUsage(
        run("plan", "size", "--take", "80", "--bed", "2.5"),
        "found \"2.5\", expected a whole number");
    Path list =
        Files.writeString(
            folder.resolve("list.csv"), "cultivar,sticks,needed\nOrrin,40,2026-07-20\n");
    assertUsage(
        run("order", "--request", list, "--sure", "80", "--batch", "5"),
        "each of --sure, --batch goes with an order book");
    assertUsage(
        run("order", "--request", list, "--today", "14/07/2026"),
        "found \"14/07/2026\", expected a date as year-month-day");
    assertUsage(run("order", list, "--crop", "avocado"), "--crop goes with --request");
  }

  /** Numbers are refused as they were typed, not rounded. */
  @Test
  void numbers_typed_wrongly_are_said_as_typed() {
    assertUsage(
        run("plan", "size", "--take", "8,5"),
        "found \"8,5\", expected per cent from 1 to under 100, e.g. 80; decimals are typed with a"
            + " point: 8.5");
    assertUsage(run("plan", "size", "--take", "ten"), "found \"ten\", expected per cent");
    for (String typed : List.of("NaN", "80d", "0x50", "1e999")) {
      assertUsage(run("plan", "size", "--take", typed), "found \"" + typed + "\"");
      assertUsage(
          run("plan", "size", "--take", "80", "--second-per-first", typed),
          "found \"" + typed + "\", expected a number, e.g. 2.5");
    }
    assertUsage(
        run("plan", "size", "--take", "80", "--second-per-first", "1,5"),
        "expected a number, e.g. 2.5; decimals are typed with a point: 1.5");
    assertUsage(
        run("watch", "--odds", "abc", "x.csv"), "found \"abc\", expected a number, e.g. 2.5");
    assertUsage(
        run("plan", "size", "--take", "80", "--margin", "2,5"),
        "expected points between 0 and 100, e.g. 10; decimals are typed with a point: 2.5");
    assertUsage(
        run("plan", "size", "--take", "80", "--off-type", "100"),
        "expected 0, or per cent from 1 to under 100");
    assertUsage(
        run("plan", "size", "--take", "1.4", "--margin", "1.6"),
        "a take of 1.4 % can't be lower by 1.6 points");
    assertUsage(run("plan", "size", "--take", "80", "--power", "4.96"), "a chance of 4.96 %");
    assertUsage(
        run("plan", "size", "--take", "80.5", "--shared-spread", "33.4"),
        "can't differ by 33.4 points about takes of 80.5 % and 70.5 %");
    assertUsage(
        run("plan", "size", "--take", "98.6", "--bed", "20", "--bed-spread", "12.6"),
        "beds can't differ by 12.6 points about a take of 98.6 %");
    assertUsage(
        run("plan", "size", "--take", "99.999"), "found 99.999, expected per cent from 1 to 99.99");
  }

  private static CommandRun layout(String... more) {
    List<Object> typed =
        new ArrayList<>(
            List.of("plan", "layout", "--cultivars", "A,B", "--stocks", "X,Y", "--grafters", "G"));
    typed.addAll(List.of(more));
    return run(typed.toArray());
  }

  @Test
  void stated_numbers_are_said_as_stated() {
    assertThat(run("plan", "size", "--take", "99.5", "--margin", "2.5").out())
        .contains("99.5 % against 97 %", "no difference of 2.5 points or more");
  }

  private static void assertUsage(CommandRun outcome, String remedy) {
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err()).contains(remedy);
  }

  @Test
  void layout_writes_a_sheet_that_reads_back_a_bench_sheet_and_labels() throws IOException {
    CommandRun outcome =
        run(
            "plan",
            "layout",
            "--cultivars",
            "Orrin,Tamsel",
            "--stocks",
            "Bracken 7,<Halden>",
            "--grafters",
            "GR-1,GR-2",
            "--days",
            "2026-03-02,2026-03-03",
            "--grafts-per-plot",
            "5",
            "--suppose",
            "Bracken 7=80,<Halden>=40",
            "--trials",
            "12",
            "--out",
            folder);
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("Every pairing in every session").contains("from 12 trials");
    Path sheet = folder.resolve("trial.csv");
    String filled = Files.readString(sheet).replace(",,5,,", ",2026-06-01,5,4,");
    Files.writeString(sheet, filled);
    assertThat(run("check", sheet).status()).isEqualTo(ExitStatus.FINE);
    assertThat(Files.readString(folder.resolve("bench-sheet.html")))
        .contains("Session 4", "&lt;Halden&gt;")
        .doesNotContain("<Halden>");
    assertThat(Files.readString(folder.resolve("labels.html")))
        .contains("P16", "&lt;Halden&gt;")
        .doesNotContain("<Halden>");
  }

  @Test
  void an_order_says_grafts_and_sticks() throws IOException {
    Path book =
        Files.writeString(
            folder.resolve("book.csv"),
            """
            \uFEFFCultivar,trees,rootstock,take,sticks
            Orrin,100,any,75,
            Tamsel,20,Bracken 7,,9
            """);
    Path json = folder.resolve("order.json");
    CommandRun outcome =
        run(
            "order",
            book,
            "--take",
            "50",
            "--season-spread",
            "0",
            "--batch-spread",
            "0",
            "--json",
            json,
            "--out",
            folder);
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    // R: 142 and 48 grafts, see docs/published-checks.md; 36 and 12 sound sticks, a tenth spoils
    assertThat(outcome.out()).contains("make 190 grafts from 54 sticks");
    assertThat(outcome.out())
        .contains("Tamsel on Bracken 7: 32 grafts from 9 sticks give about 16 trees");
    assertThat(json(json).getAsJsonArray("lines").get(0).getAsJsonObject().get("grafts").getAsInt())
        .isEqualTo(142);
    assertThat(Files.readString(folder.resolve("order.html"))).contains("Tamsel on Bracken 7");
    JsonArray lines = json(json).getAsJsonArray("lines");
    assertThat(lines.get(0).getAsJsonObject().get("onHand").isJsonNull()).isTrue();
    JsonObject there = lines.get(1).getAsJsonObject().getAsJsonObject("onHand");
    assertThat(there.get("sticks").getAsInt()).isEqualTo(9);
    assertThat(there.get("grafts").getAsInt()).isEqualTo(32);
    assertThat(there.get("trees").getAsDouble()).isEqualTo(16, within(1e-9));
    assertThat(there.get("chance").getAsDouble()).isBetween(0.0, 0.5);
  }

  /** Lines due a year apart are not of one season; a day that has passed is told. */
  @Test
  void lines_due_in_other_years_are_of_other_seasons() throws IOException {
    Path book =
        Files.writeString(
            folder.resolve("years.csv"),
            """
            cultivar,trees,due,take
            Orrin,100,2027-05-01,80
            Tamsel,20,2027-10-01,50
            Orrin,50,2028-05-01,80
            Brell,50,2024-05-01,80
            Velmar,10,,80
            """);
    Path json = folder.resolve("years.json");
    CommandRun outcome = run("order", book, "--today", "2027-01-10", "--json", json);
    assertThat(outcome.out())
        .contains(
            "That is for 3 seasons of grafting:", "for what is due 2024-05-01 or without a day;")
        .contains("Lines without a day due are reckoned with those due first.")
        .contains("for what is due from 2027-05-01 to 2027-10-01;", "for what is due 2028-05-01.")
        .contains("Both lines due from 2027-05-01 to 2027-10-01 together, grafted in one season")
        .contains("Lines due 9 months or more after the first are reckoned as grafted in a later")
        .contains("Due on a day that has passed on 2027-01-10: Brell (2024-05-01).");
    JsonObject result = json(json);
    assertThat(result.get("chanceOfAll").isJsonNull()).isTrue();
    assertThat(result.getAsJsonArray("seasons")).hasSize(3);
    JsonObject second = result.getAsJsonArray("seasons").get(1).getAsJsonObject();
    assertThat(second.get("dueTo").getAsString()).isEqualTo("2027-10-01");
    assertThat(second.get("lines").getAsInt()).isEqualTo(2);
    assertThat(
            result.getAsJsonArray("lines").get(3).getAsJsonObject().get("duePassed").getAsBoolean())
        .isTrue();
    CommandRun one = run("order", book, "--today", "2024-01-10");
    assertThat(one.out()).doesNotContain("has passed");
  }

  @Test
  void a_line_that_stands_twice_is_told() throws IOException {
    Path book =
        Files.writeString(
            folder.resolve("twice.csv"),
            "cultivar,trees,due,take\nOrrin,5,2027-05-01,80\n orrin,5,2027-05-01,80\n");
    assertThat(run("order", book, "--today", "2027-01-10").out())
        .contains(
            "Orrin (5 trees due 2027-05-01) stands in the book twice and is counted as often");
  }

  @Test
  void a_take_that_no_line_needs_is_refused() throws IOException {
    Path book = Files.writeString(folder.resolve("b.csv"), "cultivar,trees,take\nOrrin,5,70\n");
    assertUsage(
        run("order", book, "--take", "30"),
        "--take: every line states a take, so 30 % would not be used; leave the take of some lines"
            + " empty, or leave --take out");
  }

  /** One dictionary translates the records and the book; the layout it tells is the records'. */
  @Test
  void a_dictionary_translates_the_book_too() throws IOException {
    Path book = Files.writeString(folder.resolve("b.csv"), "Was;Wieviel\nOrrin;5\n");
    Path dictionary =
        Files.writeString(
            folder.resolve("d.json"),
            "{\"columns\": {\"cultivar\": \"Was\", \"trees\": \"Wieviel\"}}");
    assertThat(run("order", book, "--take", "80").err())
        .contains("expected columns cultivar and trees", "\"trees\": \"your heading\"");
    CommandRun outcome = run("order", book, "--take", "80", "--dictionary", dictionary);
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    Path list =
        Files.writeString(folder.resolve("list.csv"), "Sorte;Menge;Termin\nOrrin;5;2027-05-01\n");
    CommandRun requests = run("order", "--request", list, "--today", "2027-01-10");
    assertThat(requests.status()).as(requests.err()).isEqualTo(ExitStatus.FINE);
    assertThat(requests.out())
        .contains("1 of 1 request can be met", "10 % of the sticks spoil, common practice")
        .contains("\"Sorte\" as cultivar, \"Menge\" as sticks, \"Termin\" as needed");
  }

  @Test
  void a_book_that_cant_be_used_names_every_fault() throws IOException {
    Path book =
        Files.writeString(folder.resolve("book.csv"), "cultivar,trees,take\n,5,50\nOrrin,ten,0\n");
    CommandRun outcome = run("order", book);
    assertThat(outcome.status()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(outcome.err())
        .contains("book.csv line 2, column cultivar: found \"\"")
        .contains("book.csv line 3, column trees: found \"ten\"")
        .contains("book.csv line 3, column take: found \"0\"");
    Path noTake = Files.writeString(folder.resolve("b.csv"), "cultivar,trees\nOrrin,5\n");
    assertUsage(run("order", noTake), "no take is stated for Orrin");
  }

  /** Two seasons of the demo; a cultivar nobody grafted needs more grafts than a known one. */
  @Test
  void an_order_is_reckoned_from_records() throws IOException {
    Path data = Path.of(System.getProperty("taketally.root", ".."), "datasets");
    Path avocado = data.resolve("halden-bay-avocado");
    Path book =
        Files.writeString(
            folder.resolve("book.csv"),
            "cultivar,rootstock,trees,take\nCorvane,any,20,\nNonesuch,,20,\nOrrin,Ostrey,20,80\n");
    Path json = folder.resolve("order.json");
    CommandRun outcome =
        run(
            "order",
            book,
            "--json",
            json,
            "--records",
            avocado.resolve("grafts-2022.csv"),
            avocado.resolve("grafts-2023.csv"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains("There are no records of Nonesuch", "in 2 seasons of records");
    int known = grafts(json, 0);
    assertThat(known).isBetween(25, 80);
    assertThat(grafts(json, 1)).isGreaterThan(known);
    assertThat(grafts(json, 2)).isBetween(26, 40);
    assertUsage(
        run("order", book, "--take", "50", "--records", avocado.resolve("grafts-2022.csv")),
        "give one of them");
  }

  @Test
  void surer_than_can_be_told_is_refused_with_the_reason() throws IOException {
    Path book = Files.writeString(folder.resolve("b.csv"), "cultivar,trees\nOrrin,5\n");
    Path records = DATASETS.resolve("halden-bay-avocado").resolve("grafts-2022.csv");
    assertUsage(
        run("order", book, "--sure", "99.9", "--records", records),
        "--sure: found 99.9 %, expected at most 99 %: how bad a season may be that comes less"
            + " often than that can't be told from the seasons of any records; ask for 99 % or"
            + " less");
    assertUsage(run("order", book, "--sure", "99.95", "--take", "80"), "expected at most 99.9 %");
    assertThat(run("order", book, "--sure", "99.9", "--take", "80").out())
        .contains("in 999 seasons of 1,000");
  }

  @Test
  void a_spread_that_a_take_leaves_no_room_for_is_told_as_stated() throws IOException {
    Path book = Files.writeString(folder.resolve("b.csv"), "cultivar,trees,take\nOrrin,5,99.9\n");
    assertUsage(
        run("order", book),
        "--season-spread: found 6 points, but takes can't differ so much about one of 99.9 %; give"
            + " less");
  }

  @Test
  void options_that_change_nothing_of_an_order_are_refused() throws IOException {
    Path book = Files.writeString(folder.resolve("b.csv"), "cultivar,trees\nOrrin,5\n");
    Path avocado = DATASETS.resolve("halden-bay-avocado");
    assertUsage(run("order", book, "--take", "80", "--seed", "3"), "--seed goes with --records");
    assertUsage(run("order", book, "--take", "80", "--dictionary", "none.json"), "none.json");
    assertUsage(
        run(
            "order",
            book,
            "--season-spread",
            "3",
            "--batch-spread",
            "3",
            "--records",
            avocado.resolve("grafts-2022.csv"),
            avocado.resolve("grafts-2023.csv")),
        "--season-spread, --batch-spread goes with stated takes, and no line states one");
    assertUsage(run("order", book, "--batch", "0"), "expected a whole number of 1 or more");
    assertUsage(
        run("order", book, "--take", "80", "--buds-per-stick", "1"),
        "--buds-per-stick: found 1, expected the buds of one graft (2) at least");
  }

  private int grafts(Path json, int line) throws IOException {
    return json(json).getAsJsonArray("lines").get(line).getAsJsonObject().get("grafts").getAsInt();
  }

  private static final Path DATASETS =
      Path.of(System.getProperty("taketally.root", ".."), "datasets");

  @Test
  void requests_for_budwood_say_what_to_cut_and_when() throws IOException {
    Path list = DATASETS.resolve("halden-bay-running-season").resolve("budwood-requests.csv");
    Path json = folder.resolve("budwood.json");
    CommandRun outcome =
        run(
            "order",
            "--request",
            list,
            "--crop",
            "avocado",
            "--today",
            "2026-07-14",
            "--json",
            json,
            "--out",
            folder.resolve("page"));
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains(
            "3 of 5 requests can be met",
            "1 more can be",
            "Velmar for 2026-07-22: 8 sticks short",
            "buds are dormant")
        .contains("look twice beyond 14 days (crop profile)");
    JsonObject first = json(json).getAsJsonArray("requests").get(0).getAsJsonObject();
    assertThat(first.get("cut").getAsInt()).isEqualTo(45);
    assertThat(first.get("cutOn").getAsString()).isEqualTo("2026-07-19");
    assertThat(first.get("useBy").getAsString()).isEqualTo("2026-08-02");
    assertThat(folder.resolve("page").resolve("budwood.html")).content().contains("Velmar");
  }

  @Test
  void a_list_of_requests_that_cant_be_used_names_every_fault() throws IOException {
    Path list =
        Files.writeString(
            folder.resolve("list.csv"),
            "cultivar,sticks,needed,bud_stage\n,5,2026-07-20,\nOrrin,none,soon,sleeping\n");
    CommandRun outcome = run("order", "--request", list);
    assertThat(outcome.status()).isNotEqualTo(ExitStatus.FINE);
    assertThat(outcome.err())
        .contains("the name of a cultivar", "a whole number from 1 to 9,999,999")
        .contains("a date as yyyy-MM-dd", "one of dormant, swelling, flushed");
    assertThat(run("order", "--request", list, list).err()).contains("one of the two");
    assertThat(run("order").err()).contains("give an order book (BOOK)");
  }

  /** Wood wanted too late, past it, and of which nobody knows how long it keeps. */
  @Test
  void requests_that_cant_be_met_say_why() throws IOException {
    Path list =
        Files.writeString(
            folder.resolve("late.csv"),
            """
            cultivar,sticks,needed,bud_stage,buds,on_tree
            Orrin,10,2026-07-01,,,
            Velmar,10,2026-08-01,dormant,flushed,50
            Tessaly,10,2026-08-01,dormant,,50
            """);
    CommandRun outcome = run("order", "--request", list, "--today", "2026-07-14");
    assertThat(outcome.out())
        .contains("1 of 3 requests", "2026-07-01, which has passed", "flushed already")
        .contains("look whether buds are dormant", "How long the wood keeps isn't known");
  }

  @Test
  void stock_prices_need_records_and_a_line_that_takes_any() throws IOException {
    Path book =
        Files.writeString(
            folder.resolve("priced.csv"), "cultivar,rootstock,trees,take\nOrrin,any,20,80\n");
    assertThat(run("order", book, "--stock-price", "Pellin=2").err()).contains("needs --records");
  }
}
