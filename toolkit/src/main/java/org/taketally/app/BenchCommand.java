package org.taketally.app;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.taketally.cells.Cells;
import org.taketally.files.SafeFile;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.compare.Bootstrap;
import org.taketally.records.RecordsCheck;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.invented.BenchRecords;
import org.taketally.records.rows.RowVisitor;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures speed and memory on invented records of four sizes. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description = {
      "Measures how fast models are fitted here, on invented records.",
      "Sizes: S (2,000 grafts), M (100,000), L (1,000,000), XL (10,000,000; needs 2 GB of disk).",
      "With R and its packages lme4, glmmTMB, emmeans and data.table installed, --with-r fits there"
          + " too, and does the whole job of analyse both ways (up to L, which takes R hours)."
    })
final class BenchCommand implements Callable<Integer> {

  /** Grafts of the largest size that R is given the whole job of. */
  private static final long MOST_IN_R = BenchRecords.Size.L.rows();

  @Spec private CommandSpec spec;

  @Parameters(arity = "0..*", paramLabel = "SIZE", description = "Sizes to measure (S M).")
  private List<BenchRecords.Size> sizes = List.of(BenchRecords.Size.S, BenchRecords.Size.M);

  @Option(
      names = "--repeat",
      paramLabel = "N",
      description = "Fits per size; the last is reported (5).")
  private int repeat = 5;

  @Option(
      names = "--refits",
      paramLabel = "N",
      description = "Bootstrap refits of the last fit (none).")
  private int refits;

  @Option(names = "--threads", paramLabel = "N", description = "Most threads (all processors).")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--check",
      description = "Look through the rows as the check command does, and fit nothing.")
  private boolean check;

  @Option(
      names = "--whole-job",
      description = "Fit nothing here; do the whole job of analyse, each size from cold.")
  private boolean wholeJob;

  @Option(names = "--with-r", description = "Fit, and do the whole job, in R in the same run.")
  private boolean withR;

  @Option(names = "--keep", paramLabel = "DIR", description = "Folder to keep the record files in.")
  private Path keep;

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (repeat < 1 || threads < 1) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(), "--repeat and --threads must be 1 or more");
    }
    Path folder = keep == null ? Files.createTempDirectory("taketally-bench") : keep;
    Files.createDirectories(folder);
    for (BenchRecords.Size size : sizes) {
      Path file = folder.resolve(size + ".csv");
      try {
        measure(size, file);
      } finally {
        if (keep == null) {
          Files.deleteIfExists(file);
        }
      }
    }
    if (keep == null) {
      Files.deleteIfExists(folder);
    }
    return 0;
  }

  private void measure(BenchRecords.Size size, Path file) throws IOException, InterruptedException {
    if (Files.notExists(file)) {
      SafeFile.write(
          file,
          out -> {
            Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            BenchRecords.write(size, 1, writer);
            writer.flush();
          });
    }
    if (check) {
      check(size, file);
    } else if (wholeJob) {
      say("%s: %,d grafts", size, size.rows());
      wholeJob(size, file);
    } else {
      fit(size, file);
    }
  }

  private void fit(BenchRecords.Size size, Path file) throws IOException, InterruptedException {
    Stopwatch reading = Stopwatch.start();
    Cells cells = BenchCells.read(file);
    say("%s: %,d grafts in %,d cells, read in %s", size, size.rows(), cells.size(), reading.stop());
    Stopwatch.Times times = null;
    TakeFit fit = null;
    int fits = size == BenchRecords.Size.XL ? 1 : repeat;
    for (int i = 0; i < fits; i++) {
      Stopwatch fitting = Stopwatch.start();
      fit = BenchCells.model().fit(cells, FitOptions.defaults().withThreads(threads));
      times = fitting.stop();
    }
    say(
        "   fit %s (%s), %d steps, peak memory %,d MB",
        times,
        fits > 1 ? "fit number " + fits : "first fit",
        fit.search().size() - 1,
        Memory.peakMegabytes());
    say("   log-likelihood %.6f", fit.logLikelihood());
    if (refits > 0) {
      Stopwatch refitting = Stopwatch.start();
      int fitted = Bootstrap.of(1).withReplicates(refits).of(fit).size();
      say("   %,d bootstrap refits %s", fitted, refitting.stop());
    }
    BenchReference.of(size.name()).ifPresent(this::say);
    if (withR) {
      for (String tool : List.of("glmmTMB", "lme4")) {
        compare(tool, file, times);
      }
      wholeJob(size, file);
    }
  }

  private void check(BenchRecords.Size size, Path file) {
    RecordsReader reader =
        RecordsReader.defaults()
            .withDictionary(SheetDictionary.parse("bench", BenchRecords.DICTIONARY));
    Stopwatch checking = Stopwatch.start();
    RecordsCheck seen = reader.scan(List.of(file), List.of(), RowVisitor.NONE);
    say(
        "%s: %,d rows checked %s, %,d kinds of problems, peak memory %,d MB",
        size,
        seen.provenance().rowsRead(),
        checking.stop(),
        seen.summary().groups().size(),
        Memory.peakMegabytes());
  }

  private void say(BenchReference reference) {
    say("   reference      %.6f (%s)", reference.logLikelihood(), reference.source());
  }

  private void say(String format, Object... values) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(String.format(Locale.ROOT, format, values));
    out.flush();
  }

  private void compare(String tool, Path file, Stopwatch.Times ours)
      throws IOException, InterruptedException {
    Optional<BenchProcess.Done> done = BenchProcess.ofR("fit.R", tool, file.toString());
    if (done.isEmpty()) {
      say("   %s: not measured (R, or a package of it, is missing)", tool);
      return;
    }
    String[] found = done.get().printed().split(" ", -1);
    double cpu = Double.parseDouble(found[1]);
    say(
        "   %s: log-likelihood %s, fit %s s CPU, %s s wall: %.0f times our CPU",
        tool, found[0], found[1], found[2], cpu / ours.cpuSeconds());
  }

  /** From cold, each in its own process. */
  private void wholeJob(BenchRecords.Size size, Path file)
      throws IOException, InterruptedException {
    BenchWholeJob job = new BenchWholeJob(file, spec.root().userObject().getClass());
    Optional<BenchProcess.Done> ours = job.here();
    if (ours.isEmpty()) {
      say("   the whole job: not measured (analyse failed on these records)");
      return;
    }
    say("   the whole job, from cold: analyse %s%s", ours.get().times(), memory(ours.get()));
    if (withR && size.rows() <= MOST_IN_R) {
      compare(job.inR(), ours.get());
    }
  }

  private void compare(Optional<BenchProcess.Done> theirs, BenchProcess.Done ours) {
    if (theirs.isEmpty()) {
      say("   the whole job in R: not measured (R, or a package of it, is missing)");
      return;
    }
    BenchProcess.Done done = theirs.get();
    say(
        "   the whole job in R %s%s (CPU: %s): %.1f times our CPU, %.1f times our wall time",
        done.times(),
        memory(done),
        done.printed(),
        done.times().cpuSeconds() / ours.times().cpuSeconds(),
        done.times().wallSeconds() / ours.times().wallSeconds());
  }

  private static String memory(BenchProcess.Done done) {
    return done.peakMegabytes().isPresent()
        ? String.format(Locale.ROOT, ", peak memory %,d MB", done.peakMegabytes().getAsLong())
        : "";
  }
}
