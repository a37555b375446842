package org.taketally.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.records.problems.RecordsUnreadable;

/**
 * Whatever a file holds, reading it ends in a result or a sentence, within ten seconds. A fault
 * found is named with its seed and kept below {@code target/fuzz}; mended ones stay as files below
 * {@code src/test/resources/fuzz}.
 */
class FuzzTest {

  private static final long MOST_SECONDS = 10;
  private static final int SHOWN = 12;

  @TempDir private Path folder;

  private final ExecutorService reader =
      Executors.newCachedThreadPool(
          work -> {
            Thread thread = new Thread(work, "fuzz");
            thread.setDaemon(true);
            return thread;
          });

  @ParameterizedTest
  @EnumSource(Reading.class)
  void five_thousand_damaged_files(Reading reading) throws Exception {
    fuzz(reading, 1, 5000 / Reading.values().length + 1);
  }

  @ParameterizedTest
  @EnumSource(Reading.class)
  @Tag("slow")
  void two_hundred_thousand_damaged_files(Reading reading) throws Exception {
    fuzz(reading, 1_000_000, 200_000 / Reading.values().length + 1);
  }

  @ParameterizedTest
  @EnumSource(Reading.class)
  void whole_files_are_read(Reading reading) throws Exception {
    assertThat(fault(reading, reading.whole())).isEmpty();
  }

  @Test
  void files_that_once_found_a_fault() throws Exception {
    Path kept = Path.of("src/test/resources/fuzz");
    int count = 0;
    for (Reading reading : Reading.values()) {
      Path files = kept.resolve(reading.name().toLowerCase(java.util.Locale.ROOT));
      if (Files.isDirectory(files)) {
        try (var each = Files.newDirectoryStream(files)) {
          for (Path file : each) {
            count++;
            assertThat(fault(reading, Files.readAllBytes(file))).as(file.toString()).isEmpty();
          }
        }
      }
    }
    assertThat(count).isPositive();
  }

  private void fuzz(Reading reading, long firstSeed, int count) throws Exception {
    byte[] whole = reading.whole();
    Map<String, String> faults = new LinkedHashMap<>();
    for (long seed = firstSeed; seed < firstSeed + count && faults.size() < SHOWN; seed++) {
      byte[] damaged = reading.damaged(whole, new Damage(seed));
      String fault = fault(reading, damaged);
      if (!fault.isEmpty() && faults.putIfAbsent(fault, "seed " + seed) == null) {
        keep(reading, seed, damaged);
      }
    }
    assertThat(faults).as("faults found in " + reading).isEmpty();
  }

  private static void keep(Reading reading, long seed, byte[] damaged) throws IOException {
    Path found =
        Files.createDirectories(
            Path.of("target/fuzz", reading.name().toLowerCase(java.util.Locale.ROOT)));
    Files.write(found.resolve(seed + "-" + reading.fileName), damaged);
  }

  /** What went wrong and where, or nothing. */
  private String fault(Reading reading, byte[] bytes) throws Exception {
    Path file = Files.write(folder.resolve(reading.fileName), bytes);
    try {
      reader
          .submit(
              () -> {
                reading.read(file);
                return null;
              })
          .get(MOST_SECONDS, TimeUnit.SECONDS);
      return "";
    } catch (TimeoutException slow) {
      return "more than " + MOST_SECONDS + " seconds";
    } catch (ExecutionException failed) {
      Throwable cause = failed.getCause();
      if (cause instanceof RecordsUnreadable told) {
        String sentence = told.problem().sentence();
        return Reading.isSentence(sentence) ? "" : "no sentence: " + sentence;
      }
      return described(cause);
    }
  }

  private static String described(Throwable fault) {
    for (StackTraceElement frame : fault.getStackTrace()) {
      if (frame.getClassName().startsWith("org.taketally")
          && !frame.getClassName().startsWith("org.taketally.fuzz")) {
        return fault.getClass().getSimpleName() + " at " + frame;
      }
    }
    return fault.getClass().getSimpleName()
        + ": "
        + String.valueOf(fault.getMessage()).lines().limit(3).toList();
  }
}
