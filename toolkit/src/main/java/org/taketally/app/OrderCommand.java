package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.BudwoodRequests;
import org.taketally.plan.order.ForecastOrder;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.OnHand;
import org.taketally.plan.order.OrderBook;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.SeasonTakes;
import org.taketally.plan.order.SeasonsEnough;
import org.taketally.publish.OrderPage;
import org.taketally.wording.BudwoodPlanWords;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.ListReadingWords;
import org.taketally.wording.OnHandWords;
import org.taketally.wording.OrderBasisWords;
import org.taketally.wording.PlanJson;
import org.taketally.wording.StockChoiceWords;
import org.taketally.wording.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Grafts to make and sticks to cut for an order book. */
@Command(
    name = "order",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Says how many grafts to make and sticks to cut so that the trees ordered will be there.")
final class OrderCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;
  @Mixin private SuppliesOptions supplies;
  @Mixin private LuckOptions luck;
  @Mixin private PastRecordsOptions past;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Mixin private BudwoodOptions budwood;
  @Mixin private StockPriceOptions prices;

  @Parameters(
      arity = "0..1",
      paramLabel = "BOOK",
      description =
          "The order book, CSV or XLSX: cultivar, trees, and where known rootstock, due, take (per cent),"
              + " grafts or sticks there are.")
  private Path book;

  @Option(
      names = "--take",
      paramLabel = "PERCENT",
      converter = Percent.class,
      description = "Take of lines that state none, per cent; without --records.")
  private Double take;

  @Option(
      names = "--sure",
      paramLabel = "PERCENT",
      defaultValue = "90",
      converter = Percent.class,
      description =
          "How sure each line is to be: share of seasons in which its trees are there"
              + " (${DEFAULT-VALUE}).")
  private double sure;

  @Option(
      names = "--today",
      paramLabel = "DATE",
      description = "The day to plan from, year-month-day (today).")
  private LocalDate today = LocalDate.now(ZoneId.systemDefault());

  @Mixin private SeedOption seed = new SeedOption();

  @Override
  public Integer call() throws IOException {
    if (budwood.given() == (book != null)) {
      throw new ParameterException(
          spec.commandLine(),
          "give an order book (BOOK) to be told grafts and sticks, or --request LIST for budwood"
              + " that others ask for; one of the two");
    }
    if (!past.given()) {
      OptionsTogether.refuse(
          spec.commandLine(),
          "goes with --records, and changes nothing without; leave it out",
          "--seed");
    }
    if (budwood.given()) {
      OptionsTogether.refuse(
          spec.commandLine(),
          "goes with an order book, and changes nothing of --request; leave it out",
          "--take",
          "--sure",
          "--season-spread",
          "--batch",
          "--batch-spread",
          "--late-loss",
          "--cost-per-graft",
          "--buds-per-graft",
          "--buds-per-stick",
          "--stock-price",
          "--margin",
          "--seed");
      return requests();
    }
    OptionsTogether.refuse(
        spec.commandLine(),
        "goes with --request, and changes nothing of an order book; leave it out",
        "--crop");
    return ordered();
  }

  private Integer requests() throws IOException {
    require(budwood.list());
    OrderTerms terms = supplies.terms(sure);
    BudwoodRequests read = budwood.read(past);
    BudwoodPlan plan = budwood.plan(read, terms.wood(), past, today);
    BudwoodPlanWords words = BudwoodPlanWords.of(plan);
    List<String> notes = new ArrayList<>(ListReadingWords.of(read.headings()));
    notes.add(OrderBasisWords.spoiled(terms.wood()));
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.heading("In short");
      printing.paragraphs(words.headline());
      printing.heading("Request by request");
      TextTable.lines(words.headings(), words.table()).forEach(printing::line);
      printing.heading("To mind");
      words.more().forEach(printing::paragraphs);
      printing.heading("What this rests on");
      notes.forEach(printing::paragraphs);
    }
    if (out.asked()) {
      page("budwood.html", OrderPage.of(plan, notes), budwood.inputs(past));
    }
    json.write(words.json(), out, budwood.inputs(past));
    return ExitStatus.FINE;
  }

  private void page(String name, OrderPage page, List<Path> inputs) throws IOException {
    Path written = out.files("order", inputs).add(name, page.html()).write().get(0);
    spec.commandLine().getErr().println("page written: " + written);
    spec.commandLine().getErr().flush();
  }

  private Integer ordered() throws IOException {
    OrderBook read = read();
    requireTellable();
    OrderTerms terms = supplies.terms(sure);
    List<String> notes = new ArrayList<>(ListReadingWords.of(read.headings()));
    List<OrderBook.Entry> entries = withDefaultTake(read.entries());
    List<SeasonTakes> takes = takes(entries, notes);
    List<Ordered> lines = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      lines.add(new Ordered(entries.get(i).line(), takes.get(i)));
    }
    GraftOrder order = GraftOrder.of(lines, terms);
    GraftOrderWords words = GraftOrderWords.of(order);
    notes.addAll(0, words.repeated());
    words.passed(today).ifPresent(passed -> notes.add(0, passed));
    List<Optional<OnHand>> there = OnHand.byLine(entries, lines, order);
    notes.addAll(OnHandWords.of(there.stream().flatMap(Optional::stream).toList()));
    boolean anyStock = entries.stream().anyMatch(entry -> entry.line().rootstock().isEmpty());
    prices.choice(past, anyStock).ifPresent(choice -> notes.addAll(StockChoiceWords.of(choice)));
    notes.add(luck.lossNote());
    notes.add(supplies.note(terms.wood()));
    if (!json.alone()) {
      print(words, notes);
    }
    if (out.asked()) {
      page("order.html", OrderPage.of(order, notes), past.inputs(book));
    }
    json.write(PlanJson.of(order, there, today), out, past.inputs(book));
    return ExitStatus.FINE;
  }

  private void requireTellable() {
    double surest = past.given() ? SeasonsEnough.SUREST_BY_RECORDS : SeasonsEnough.SUREST_STATED;
    if (!SeasonsEnough.tellable(sure, surest)) {
      throw new ParameterException(
          spec.commandLine(),
          "--sure: found %s, expected at most %s: how bad a season may be that comes less often than that can't be told from %s; ask for %s or less"
              .formatted(
                  Words.statedPercent(sure),
                  Words.statedPercent(surest),
                  past.given() ? "the seasons of any records" : "stated takes and spreads",
                  Words.statedPercent(surest)));
    }
  }

  /** From records where they are given and no take is stated; as stated otherwise. */
  private List<SeasonTakes> takes(List<OrderBook.Entry> entries, List<String> notes)
      throws IOException {
    boolean stated = entries.stream().anyMatch(entry -> entry.take().isPresent());
    if (stated) {
      notes.add(luck.statedNote());
    }
    if (!past.given()) {
      return entries.stream()
          .map(entry -> luck.seasons(stated(entry), SeasonsEnough.stated(sure)))
          .toList();
    }
    if (everyTakeStated(entries)) {
      throw new ParameterException(
          spec.commandLine(),
          "--records: every line states a take, so the records would not be used; leave the take of"
              + " some lines empty, or leave --records out");
    }
    ForecastOrder forecast =
        new ForecastOrder(
            past.fit(), SeasonsEnough.byRecords(sure), seed.value(), luck.besideRecords());
    if (!stated) {
      OptionsTogether.refuse(
          spec.commandLine(),
          "goes with stated takes, and no line states one: the records say how far takes differ;"
              + " leave it out",
          forecast.knowsSeasons()
              ? new String[] {"--season-spread", "--batch-spread"}
              : new String[] {"--batch-spread"});
    }
    notes.addAll(past.notes());
    if (!forecast.knowsSeasons()) {
      notes.add(luck.oneSeasonNote());
    }
    entries.stream()
        .filter(entry -> entry.take().isEmpty())
        .flatMap(entry -> forecast.unknown(entry.line()).stream())
        .distinct()
        .map(GraftOrderWords::unknown)
        .forEach(notes::add);
    return forecast.takes(entries, luck::seasons);
  }

  /** Lines without a take get that of --take; with records they are left to these. */
  private List<OrderBook.Entry> withDefaultTake(List<OrderBook.Entry> entries) {
    if (take == null) {
      return entries;
    }
    if (past.given()) {
      throw new ParameterException(
          spec.commandLine(),
          "--take and --records both say what lines without a take are to have; give one of them");
    }
    if (everyTakeStated(entries)) {
      throw new ParameterException(
          spec.commandLine(),
          "--take: every line states a take, so %s would not be used; leave the take of some lines empty, or leave --take out"
              .formatted(Words.statedPercent(take)));
    }
    return entries.stream()
        .map(
            entry ->
                entry.take().isPresent()
                    ? entry
                    : new OrderBook.Entry(
                        entry.line(), OptionalDouble.of(take), entry.grafts(), entry.sticks()))
        .toList();
  }

  private static boolean everyTakeStated(List<OrderBook.Entry> entries) {
    return entries.stream().allMatch(entry -> entry.take().isPresent());
  }

  private OrderBook read() {
    require(book);
    OrderBook read = OrderBook.read(book, past.ofList());
    UnusableList.require("the order book", read.problems());
    return read;
  }

  private void require(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new ParameterException(
          spec.commandLine(), "there is no file %s; check the name and the folder".formatted(file));
    }
  }

  private double stated(OrderBook.Entry entry) {
    return entry
        .take()
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "no take is stated for %s: add a column take (per cent) to the book, say --take, or give --records of past seasons"
                        .formatted(GraftOrderWords.name(entry.line()))));
  }

  private void print(GraftOrderWords words, List<String> notes) {
    Printing printing = new Printing(spec.commandLine().getOut());
    printing.heading("In short");
    printing.paragraphs(words.headline());
    printing.heading("Line by line (ranges: 8 seasons in 10)");
    TextTable.lines(words.headings(), words.table()).forEach(printing::line);
    printing.heading("To mind");
    words.more().forEach(printing::paragraphs);
    printing.heading("What this rests on");
    notes.forEach(printing::paragraphs);
  }
}
