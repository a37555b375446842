package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records so small that each thing counted is one: sentences keep to the singular. */
class OneOfEverythingTest {

  private static final String NOT_A_PLURAL =
      "(?s).*\\b1 (rows|grafts|seasons|members|days|plots|cultivars|rootstocks|hands|levels)\\b.*";

  @TempDir private Path folder;

  private String said(Object... arguments) {
    CommandRun run = CommandRun.of(arguments).said();
    return run.out() + run.err();
  }

  @Test
  void one_graft_is_no_grafts() throws IOException {
    Path one =
        Files.writeString(
            folder.resolve("one.csv"),
            """
            season,cultivar,rootstock,grafter,graft_date,assessed_date,grafts,takes
            2025,Orrin,Pellin,Ann,2025-03-04,2025-05-04,1,1
            """);
    assertThat(said("check", one, "--out", folder.resolve("c")))
        .contains("1 row read = 1 kept + 0 set aside; 1 graft assessed, 1 took")
        .doesNotMatch(NOT_A_PLURAL);
    assertThat(said("analyse", one, "--out", folder.resolve("a")))
        .contains("the only graft took, so nothing can be said")
        .doesNotMatch(NOT_A_PLURAL);
    for (String language : new String[] {"en", "es"}) {
      assertThat(said("summary", one, "--language", language, "--out", folder.resolve(language)))
          .doesNotMatch(NOT_A_PLURAL);
    }
  }

  /** On a phone a figure writes the count beside its heading. */
  @Test
  void a_level_with_one_graft_is_told_apart_in_figures_too() throws IOException {
    Path four =
        Files.writeString(
            folder.resolve("four.csv"),
            """
            season,cultivar,rootstock,grafter,graft_date,assessed_date,grafts,takes
            2025,Orrin,Pellin,Ann,2025-03-04,2025-05-04,10,8
            2025,Bexley,Halden,Bo,2025-03-04,2025-05-04,10,3
            2025,Orrin,Halden,Cy,2025-03-04,2025-05-04,10,5
            2025,Tessaly,Varric,Di,2025-03-04,2025-05-04,1,1
            """);
    assertThat(said("analyse", four, "--out", folder.resolve("a"))).doesNotMatch(NOT_A_PLURAL);
    assertThat(Files.readString(folder.resolve("a").resolve("answers.html")))
        .contains("grafts: 1<")
        .doesNotMatch(NOT_A_PLURAL);
  }
}
