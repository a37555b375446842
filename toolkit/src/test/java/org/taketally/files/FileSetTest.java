package org.taketally.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files are written together or not at all, and never over a person's work. */
class FileSetTest {

  private static final Guard NOTHING_READ = Guard.of(List.of());
  private static final Guard REPLACING = new Guard(List.of(), true);

  @TempDir private Path folder;

  private FileSet pages() {
    return pages(NOTHING_READ);
  }

  private FileSet pages(Guard guard) {
    return FileSet.in(folder, "pages", guard);
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  /** Names in the folder, the ledger left out. */
  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> !name.equals(Ledger.FILE))
          .sorted()
          .toList();
    }
  }

  @Test
  void makes_the_folder_and_gives_the_files_in_order() throws IOException {
    Path deep = folder.resolve("a/b");
    List<Path> written =
        FileSet.in(deep, "pages", NOTHING_READ).add("z.md", "z").add("a.md", "a").write();
    assertThat(written).containsExactly(deep.resolve("z.md"), deep.resolve("a.md"));
    assertThat(deep.resolve("z.md")).hasContent("z");
  }

  @Test
  void writes_anew_what_it_wrote_and_takes_away_what_is_no_longer_of_the_set() throws IOException {
    pages().add("a.md", "one").add("b.md", "one").write();
    FileSet.in(folder, "others", NOTHING_READ).add("c.md", "other").write();
    pages().add("a.md", "two").write();
    assertThat(names()).containsExactly("a.md", "c.md");
    assertThat(text("a.md")).isEqualTo("two");
  }

  @Test
  void spares_a_file_it_did_not_write() throws IOException {
    Files.writeString(folder.resolve("b.md"), "mine");
    assertThatThrownBy(() -> pages().add("a.md", "new").add("b.md", "new").write())
        .isInstanceOf(WouldReplace.class)
        .hasMessage(
            "%s stands there already and is not known to be written by Taketally, so nothing was"
                + " written; choose another name or folder, or say --replace to write over it",
            folder.resolve("b.md"));
    assertThat(names()).containsExactly("b.md");
    assertThat(text("b.md")).isEqualTo("mine");
    pages(REPLACING).add("b.md", "new").write();
    assertThat(text("b.md")).isEqualTo("new");
  }

  @Test
  void spares_a_file_that_was_changed_since() throws IOException {
    pages().add("a.md", "one").add("b.md", "one").write();
    Files.writeString(folder.resolve("a.md"), "one, with my note");
    assertThatThrownBy(() -> pages().add("a.md", "two").write())
        .isInstanceOf(WouldReplace.class)
        .hasMessageContaining("was changed since Taketally wrote it");
    Files.writeString(folder.resolve("a.md"), "one");
    Files.writeString(folder.resolve("b.md"), "one, with my note");
    pages().add("a.md", "two").write();
    assertThat(text("b.md")).as("no longer of the set, but worked on").contains("my note");
  }

  @ParameterizedTest
  @CsvSource({"input.csv", "./input.csv", "link.csv", "hard.csv"})
  @DisabledOnOs(OS.WINDOWS)
  void never_writes_over_a_file_being_read(String name) throws IOException {
    Path input = Files.writeString(folder.resolve("input.csv"), "records of years");
    Files.createSymbolicLink(folder.resolve("link.csv"), Path.of("input.csv"));
    Files.createLink(folder.resolve("hard.csv"), input);
    for (boolean replace : new boolean[] {false, true}) {
      Guard guard = new Guard(List.of(input), replace);
      assertThatThrownBy(() -> FileSet.write(folder.resolve(name), guard, Content.text("new")))
          .isInstanceOf(WouldReplace.class)
          .hasMessageContaining("is one of the files being read");
    }
    assertThat(input).hasContent("records of years");
  }

  /** A link in the folder is replaced itself; what it leads to is somebody else's. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void writes_nothing_through_a_link() throws IOException {
    Path elsewhere = Files.createTempFile(folder, "elsewhere", ".csv");
    Files.writeString(elsewhere, "records of years");
    Files.createSymbolicLink(folder.resolve("a.md"), elsewhere);
    assertThatThrownBy(() -> pages().add("a.md", "new").write()).isInstanceOf(WouldReplace.class);
    pages(REPLACING).add("a.md", "new").write();
    assertThat(elsewhere).hasContent("records of years");
    assertThat(text("a.md")).isEqualTo("new");
  }

  @Test
  void an_earlier_output_that_is_read_now_stays_even_if_it_is_outdated() throws IOException {
    pages().add("a.csv", "one").add("b.csv", "one").write();
    pages(Guard.of(List.of(folder.resolve("b.csv")))).add("a.csv", "two").write();
    assertThat(names()).containsExactly("a.csv", "b.csv");
  }

  /** As on a full disk. */
  @Test
  void a_file_that_cannot_be_written_leaves_all_as_it_was() throws IOException {
    pages().add("a.md", "one").add("b.md", "one").write();
    assertThatThrownBy(
            () ->
                pages()
                    .add("a.md", "two")
                    .add(
                        "b.md",
                        out -> {
                          out.write(new byte[1 << 20]);
                          throw new IOException("No space left on device");
                        })
                    .write())
        .hasMessage("No space left on device");
    assertThat(names()).containsExactly("a.md", "b.md");
    assertThat(text("a.md") + text("b.md")).isEqualTo("oneone");
  }

  /** As on a system where a file open elsewhere can't be replaced. */
  @ParameterizedTest
  @CsvSource({"0", "1", "2", "3"})
  void a_file_that_cannot_be_placed_leaves_all_as_it_was(int move) throws IOException {
    pages().add("a.md", "one").add("gone.md", "one").write();
    int[] moves = {0};
    Mover stuck =
        (from, to) -> {
          if (moves[0]++ == move) {
            throw new IOException("in use");
          }
          Mover.ATOMIC.move(from, to);
        };
    assertThatThrownBy(() -> pages().add("a.md", "two").add("b.md", "two").write(stuck))
        .hasMessage("in use");
    assertThat(names()).containsExactly("a.md", "gone.md");
    assertThat(text("a.md") + text("gone.md")).isEqualTo("oneone");
    pages().add("a.md", "three").write();
    assertThat(names()).containsExactly("a.md");
  }

  @Test
  void a_folder_made_for_nothing_goes_again() {
    Path made = folder.resolve("new");
    assertThatThrownBy(
            () ->
                FileSet.in(made, "pages", NOTHING_READ)
                    .add(
                        "a",
                        out -> {
                          throw new IOException("No space left on device");
                        })
                    .write())
        .isInstanceOf(IOException.class);
    assertThat(made).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({
    "../../etc/passwd,_____etc_passwd",
    "a/b.csv,a_b.csv",
    ".hidden,_hidden",
    "CON.csv,_CON.csv",
    "fridge: 1?.csv,fridge_ 1_.csv",
    "tab\there.csv,tab_here.csv"
  })
  void names_stay_in_their_folder(String typed, String written) throws IOException {
    pages().add(typed, "x").write();
    assertThat(names()).containsExactly(written.replace("_____etc", "__.._etc"));
  }

  @Test
  void names_that_differ_by_case_only_do_not_meet() throws IOException {
    pages().add("Tag.csv", "1").add("tag.csv", "2").write();
    assertThat(names()).containsExactly("Tag.csv", "tag-2.csv");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void keeps_the_permissions_of_the_file_before() throws IOException {
    pages().add("a.md", "one").write();
    Files.setPosixFilePermissions(
        folder.resolve("a.md"), PosixFilePermissions.fromString("rw-rw-r--"));
    pages().add("a.md", "two").write();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("a.md"))))
        .isEqualTo("rw-rw-r--");
  }

  @Test
  void a_file_where_the_folder_should_be_is_told() throws IOException {
    Path file = Files.writeString(folder.resolve("out"), "mine");
    assertThatThrownBy(() -> FileSet.in(file, "pages", NOTHING_READ).add("a", "x").write())
        .isInstanceOf(WouldReplace.class)
        .hasMessageContaining("is a file");
    assertThat(file).hasContent("mine");
  }

  @Test
  void a_damaged_ledger_spares_more_not_less() throws IOException {
    pages().add("a.md", "one").write();
    Files.write(folder.resolve(Ledger.FILE), new byte[] {(byte) 0xC3, 0x28, 0, 10});
    assertThatThrownBy(() -> pages().add("a.md", "two").write()).isInstanceOf(WouldReplace.class);
  }

  @Test
  void the_ledger_is_in_a_form_other_programs_check() throws IOException {
    pages().add("a.md", "one").write();
    assertThat(text(Ledger.FILE).lines().filter(line -> !line.startsWith("#")))
        .containsExactly("7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed  a.md");
  }

  /** Two commands at once: the second knew nothing of what the first wrote meanwhile. */
  @ParameterizedTest
  @CsvSource({"false, false", "false, true", "true, false", "true, true"})
  void what_was_read_and_changed_meanwhile_is_not_written_anew(boolean there, boolean replace)
      throws IOException {
    if (there) {
      pages().add("counts.csv", "old").write();
    }
    FileSet second = pages(new Guard(List.of(), replace)).asRead("counts.csv");
    pages().add("counts.csv", "first").write();

    assertThatThrownBy(() -> second.add("counts.csv", "second").write())
        .isInstanceOf(WouldReplace.class)
        .hasMessage(
            "%s was changed while this was worked out, perhaps by another command, so nothing was written; run the command again",
            folder.resolve("counts.csv"));
    assertThat(text("counts.csv")).isEqualTo("first");
  }

  @Test
  void what_was_read_and_stayed_is_written_anew() throws IOException {
    pages().asRead("counts.csv").add("counts.csv", "old").write();
    pages().asRead("counts.csv").add("counts.csv", "new").write();
    assertThat(text("counts.csv")).isEqualTo("new");
  }

  /** Another command that ends while pages are drawn: what it wrote stays known as written. */
  @Test
  void what_another_set_wrote_while_this_one_was_written_stays_known() throws IOException {
    FileSet other = FileSet.in(folder, "others", NOTHING_READ).add("b.md", "b");
    pages()
        .add(
            "a.md",
            out -> {
              other.write();
              out.write('a');
            })
        .write();
    FileSet.in(folder, "others", NOTHING_READ).add("b.md", "anew").write();
    assertThat(text("b.md")).isEqualTo("anew");
  }

  @Test
  void the_ledger_itself_may_be_a_file_being_read() throws IOException {
    Path records = Files.writeString(folder.resolve(Ledger.FILE), "cultivar");
    assertThatThrownBy(() -> pages(Guard.of(List.of(records))).add("a.md", "a").write())
        .isInstanceOf(WouldReplace.class)
        .hasMessageContaining("is one of the files being read");
    assertThat(records).hasContent("cultivar");
  }

  @Test
  void a_file_where_the_folder_should_be_is_told_early() throws IOException {
    Path file = Files.writeString(folder.resolve("f"), "f");
    assertThatThrownBy(() -> FileSet.in(file, "pages", NOTHING_READ).requireFree("a.md"))
        .isInstanceOf(WouldReplace.class)
        .hasMessageContaining("is a file, and a folder of that name was to be made");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void a_full_disk_names_the_file() {
    assertThatThrownBy(() -> FileSet.write(Path.of("/dev/full"), NOTHING_READ, Content.text("a")))
        .isInstanceOf(IOException.class)
        .hasMessage("/dev/full: No space left on device");
  }

  @Test
  void a_device_is_written_to_and_stays_one() throws IOException {
    Path device = Path.of("/dev/null");
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(device));
    FileSet.write(device, NOTHING_READ, Content.text("x"));
    assertThat(Files.isRegularFile(device)).isFalse();
  }

  @Test
  void a_single_file_is_replaced_whole_and_through_links() throws IOException {
    Path file = Files.writeString(folder.resolve("a.ipynb"), "old");
    assertThatThrownBy(
            () ->
                SafeFile.write(
                    file,
                    out -> {
                      out.write("half".getBytes(StandardCharsets.UTF_8));
                      throw new IOException("No space left on device");
                    }))
        .isInstanceOf(IOException.class);
    assertThat(file).hasContent("old");
    SafeFile.write(file, "new");
    assertThat(file).hasContent("new");
    assertThat(names()).containsExactly("a.ipynb");
  }
}
