package org.taketally.plan.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.plan.layout.LayoutPlan.Arrangement;
import org.taketally.records.CropProfiles;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** A sheet that was filled in reads as records, with nothing to find fault with. */
class LayoutSheetTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

  private static final LayoutPlan PLAN =
      LayoutPlan.of(
              List.of("Orrin", "Tamsel, late", "Élan \"red\""),
              List.of("Halden seedling", "Bracken 7"),
              List.of("GR-1", "GR-2"),
              List.of("2026-03-02", "2026-03-03"))
          .withGraftsPerPlot(5);

  private static GraftRecords filledIn(TrialLayout layout, Path folder) throws IOException {
    Random random = new Random(3);
    List<String> lines = LayoutSheet.of(layout, "North bench").csv().lines().toList();
    String filled =
        IntStream.range(0, lines.size())
            .mapToObj(
                i ->
                    i == 0
                        ? lines.get(0)
                        : lines
                            .get(i)
                            .replace(",,5,,", ",2026-06-01,5," + (2 + random.nextInt(4)) + ","))
            .collect(Collectors.joining("\n"));
    Path file = Files.writeString(folder.resolve("trial.csv"), filled + "\n");
    return RecordsReader.defaults()
        .withCrop(CropProfiles.named("avocado"))
        .withToday(TODAY)
        .read(List.of(file));
  }

  @Test
  void a_filled_in_sheet_reads_without_a_problem(@TempDir Path folder) throws IOException {
    for (Arrangement arrangement : List.of(Arrangement.BLOCKS, Arrangement.SPLIT_PLOT)) {
      TrialLayout layout = TrialLayout.of(PLAN.withArrangement(arrangement));
      GraftRecords records = filledIn(layout, folder);
      assertThat(records.check().problems()).isEmpty();
      assertThat(records.check().provenance().rowsKept()).isEqualTo(24);
      assertThat(records.grafts()).isEqualTo(120);
      assertThat(records.frame().stringColumn("cultivar").unique().asList())
          .containsExactlyInAnyOrder("Orrin", "Tamsel, late", "Élan \"red\"");
    }
  }

  @Test
  void a_day_yet_to_be_fixed_stands_in_the_notes() {
    TrialLayout layout =
        TrialLayout.of(
            LayoutPlan.of(
                List.of("Orrin"),
                List.of("A", "B"),
                List.of("GR-1"),
                List.of("first dry day", "x")));
    assertThat(LayoutSheet.of(layout, "").csv().lines().skip(1).findFirst().orElseThrow())
        .matches("P1,,,1,GR-1,Orrin,[AB],,,1,,first dry day");
  }
}
