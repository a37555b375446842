package org.taketally.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A process that ends at any moment, as by {@code kill -9}, leaves whole files of one version. */
class LostProcessTest {

  @TempDir private Path folder;

  private Process writing(int firstVersion, int lostAtMove) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("java.class.path"),
            LostProcess.class.getName(),
            folder.toString(),
            Integer.toString(firstVersion),
            Integer.toString(lostAtMove))
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** Versions found in the folder; every file must be whole. */
  private SortedSet<Integer> versions() throws IOException {
    SortedSet<Integer> found = new TreeSet<>();
    for (String name : LostProcess.NAMES) {
      Path file = folder.resolve(name);
      if (Files.exists(file)) {
        List<String> lines = Files.readAllLines(file);
        assertThat(lines).as(name + " is whole").hasSize(5001).endsWith("end");
        found.add(Integer.parseInt(lines.get(0).substring("version ".length())));
      }
    }
    return found;
  }

  private void finish() throws IOException {
    FileSet.in(folder, "any", Guard.of(List.of())).requireFree();
  }

  private void assertOneVersion() throws IOException {
    SortedSet<Integer> versions = versions();
    assertThat(versions).hasSize(1);
    assertThat(Files.exists(folder.resolve("even.md"))).isEqualTo(versions.first() % 2 == 0);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .as("nothing is left over")
          .noneMatch(name -> name.startsWith(Switch.NEW) || name.startsWith(Switch.READY));
    }
    LostProcess.version(folder, 1).write();
  }

  /** Moves: the set becomes ready, then four or five files and the ledger take their places. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5})
  void lost_at_any_rename_the_next_one_finishes(int move) throws Exception {
    LostProcess.version(folder, 2).write();
    assertThat(writing(3, move).waitFor()).isEqualTo(9);
    finish();
    assertThat(versions()).containsExactly(move == 0 ? 2 : 3);
    assertOneVersion();
  }

  @Test
  void what_a_person_changed_in_between_is_spared() throws Exception {
    LostProcess.version(folder, 2).write();
    assertThat(writing(3, 2).waitFor()).isEqualTo(9);
    Files.writeString(folder.resolve("d.md"), "my note");
    finish();
    assertThat(folder.resolve("d.md")).hasContent("my note");
  }

  @Test
  void lost_at_ten_moments() throws Exception {
    lose(10, 1);
  }

  @Test
  @Tag("slow")
  void lost_at_two_hundred_moments() throws Exception {
    lose(200, 2);
  }

  private void lose(int times, long seed) throws Exception {
    Random random = new Random(seed);
    LostProcess.version(folder, 1).write();
    for (int i = 0; i < times; i++) {
      Process process = writing(10 + i, -1);
      Thread.sleep(150 + random.nextInt(500));
      process.destroyForcibly().waitFor();
      versions();
      finish();
      assertOneVersion();
    }
  }
}
