package org.taketally.app;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.OrderBook;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.SeasonTakes;
import org.taketally.plan.order.WoodUse;
import org.taketally.publish.OrderPage;
import org.taketally.terms.Problem;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.PlanJson;
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
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Parameters(
      paramLabel = "BOOK",
      description =
          "The order book, CSV: cultivar, trees, and where known rootstock, due, take (per cent),"
              + " grafts or sticks there are.")
  private Path book;

  @Option(
      names = "--take",
      paramLabel = "PERCENT",
      converter = Percent.class,
      description = "Take of lines that state none, per cent.")
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

  @Override
  public Integer call() throws IOException {
    OrderBook read = read();
    OrderTerms terms = supplies.terms(sure);
    List<Ordered> lines = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (OrderBook.Entry entry : read.entries()) {
      SeasonTakes takes = luck.seasons(stated(entry));
      lines.add(new Ordered(entry.line(), takes));
      fixed(entry, takes, terms.wood(), notes);
    }
    GraftOrder order = GraftOrder.of(lines, terms);
    notes.addAll(luck.notes());
    notes.add(supplies.note(terms.wood()));
    if (!json.alone()) {
      print(order, notes);
    }
    if (out.asked()) {
      Path page =
          out.files("order", List.of(book))
              .add("order.html", OrderPage.of(order, notes).html())
              .write()
              .get(0);
      spec.commandLine().getErr().println("page written: " + page);
      spec.commandLine().getErr().flush();
    }
    json.write(PlanJson.of(order), out, List.of(book));
    return ExitStatus.FINE;
  }

  private OrderBook read() throws IOException {
    if (!Files.isRegularFile(book)) {
      throw new ParameterException(
          spec.commandLine(), "there is no file %s; check the name and the folder".formatted(book));
    }
    OrderBook read;
    try (Reader text = Files.newBufferedReader(book, StandardCharsets.UTF_8)) {
      read = OrderBook.read(book.getFileName().toString(), text);
    }
    if (!read.problems().isEmpty()) {
      throw new UnusableBook(
          String.join("\n  ", read.problems().stream().map(Problem::sentence).toList()));
    }
    return read;
  }

  /** An order book with lines that can't be used: an order is answered whole or not at all. */
  static final class UnusableBook extends RuntimeException {
    private static final long serialVersionUID = 1;

    UnusableBook(String problems) {
      super("the order book can't be used as it is:\n  " + problems);
    }
  }

  private double stated(OrderBook.Entry entry) {
    if (entry.take().isPresent()) {
      return entry.take().getAsDouble();
    }
    if (take == null) {
      throw new ParameterException(
          spec.commandLine(),
          "no take is stated for %s: add a column take (per cent) to the book, or say --take"
              .formatted(GraftOrderWords.name(entry.line())));
    }
    return take;
  }

  private static void fixed(
      OrderBook.Entry entry, SeasonTakes takes, WoodUse wood, List<String> notes) {
    OptionalInt grafts = entry.grafts();
    if (entry.sticks().isPresent()) {
      int enoughFor = wood.graftsFrom(entry.sticks().getAsInt());
      grafts = OptionalInt.of(Math.min(enoughFor, grafts.orElse(enoughFor)));
    }
    if (grafts.isPresent()) {
      int n = grafts.getAsInt();
      notes.add(
          "What there is. "
              + GraftOrderWords.fixed(
                  entry.line(),
                  n,
                  GraftOrder.trees(takes, n),
                  takes.chanceOfAtLeast(entry.line().trees(), n)));
    }
  }

  private void print(GraftOrder order, List<String> notes) {
    Printing printing = new Printing(spec.commandLine().getOut());
    GraftOrderWords words = GraftOrderWords.of(order);
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
