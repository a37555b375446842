package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.RecordsUnreadable;

/** Links lead to what a person named, or are refused: to no device, no pipe, no other place. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@DisabledOnOs(OS.WINDOWS)
class LinksRefusedTest {

  private static final String ROWS =
      "cultivar,rootstock,grafts,takes\nOrrin,Ostrey,10,5\nCorvane,Ostrey,8,2\n";

  @TempDir private Path folder;

  private Path link(String name, String to) throws IOException {
    return Files.createSymbolicLink(folder.resolve(name), Path.of(to));
  }

  private Path pipe() throws IOException, InterruptedException {
    Path pipe = folder.resolve("pipe.csv");
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    return pipe;
  }

  @Test
  void a_pipe_that_nobody_fills_is_refused_at_once() throws IOException, InterruptedException {
    Path pipe = pipe();
    assertThatThrownBy(() -> RecordsReader.defaults().read(pipe))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("pipe.csv: found \"a pipe or a device\"")
        .hasMessageContaining("save what it gives as a file");
    assertThatThrownBy(() -> DictionaryProposal.of(List.of(pipe)))
        .isInstanceOf(RecordsUnreadable.class);
    assertThatThrownBy(() -> SheetDictionary.load(pipe)).isInstanceOf(RecordsUnreadable.class);
    assertThatThrownBy(() -> CropProfiles.load(pipe)).isInstanceOf(RecordsUnreadable.class);
  }

  @Test
  void a_link_to_a_device_without_end_is_refused() throws IOException {
    for (String device : List.of("/dev/zero", "/dev/urandom")) {
      Path link = link(Path.of(device).getFileName() + ".csv", device);
      assertThatThrownBy(() -> RecordsReader.defaults().read(link))
          .isInstanceOf(RecordsUnreadable.class)
          .hasMessageContaining("a pipe or a device");
      assertThatThrownBy(() -> SheetDictionary.load(link)).isInstanceOf(RecordsUnreadable.class);
      assertThatThrownBy(() -> CropProfiles.load(link)).isInstanceOf(RecordsUnreadable.class);
    }
  }

  @Test
  void links_in_a_circle_or_to_nowhere_are_told() throws IOException {
    for (Path link : List.of(link("circle.csv", "circle.csv"), link("lost.csv", "gone.csv"))) {
      assertThatThrownBy(() -> RecordsReader.defaults().read(link))
          .isInstanceOf(RecordsUnreadable.class)
          .hasMessageContaining(link.getFileName().toString());
    }
  }

  @Test
  void a_folder_that_holds_a_link_to_itself_is_read_once() throws IOException {
    Files.writeString(folder.resolve("season.csv"), ROWS);
    link("again", ".");
    assertThat(RecordsReader.defaults().read(folder).grafts()).isEqualTo(18);
    link("itself.csv", ".");
    assertThatThrownBy(() -> RecordsReader.defaults().read(folder))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("itself.csv: found \"a folder\"");
  }

  @Test
  void a_sheet_read_by_its_name_and_by_a_link_is_said_to_be_one() throws IOException {
    Path sheet = Files.writeString(folder.resolve("season.csv"), ROWS);
    Path link = link("copy.csv", "season.csv");
    RecordsCheck check = RecordsReader.defaults().read(sheet, link).check();
    assertThat(check.summary().groups())
        .anyMatch(group -> group.kind() == ProblemKind.SAME_FILE_TWICE);
  }

  private Path workbook() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = book.newWorksheet("2024");
      String[] headings = {"cultivar", "rootstock", "grafts", "takes"};
      for (int i = 0; i < headings.length; i++) {
        sheet.value(0, i, headings[i]);
        sheet.value(1, i, i < 2 ? headings[i] + " A" : null);
      }
      sheet.value(1, 2, 10);
      sheet.value(1, 3, 9);
    }
    return Files.write(folder.resolve("book.xlsx"), out.toByteArray());
  }

  /** The workbook with one part changed and one added. */
  private Path changed(String part, String from, String to, String added) throws IOException {
    Path other = folder.resolve("changed.xlsx");
    try (ZipFile zip = new ZipFile(workbook().toFile());
        OutputStream file = Files.newOutputStream(other);
        ZipOutputStream out = new ZipOutputStream(file)) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        String text = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
        boolean here = entry.getName().equals(part);
        assertThat(text).as(part).satisfies(t -> assertThat(!here || t.contains(from)).isTrue());
        out.putNextEntry(new ZipEntry(entry.getName()));
        out.write((here ? text.replace(from, to) : text).getBytes(StandardCharsets.UTF_8));
        out.closeEntry();
      }
      out.putNextEntry(new ZipEntry("xl/externalLinks/_rels/externalLink1.xml.rels"));
      out.write(added.getBytes(StandardCharsets.UTF_8));
      out.closeEntry();
    }
    return other;
  }

  /** The pipe stands where the link leads: whoever followed it would wait for ever. */
  @Test
  void a_cell_that_refers_to_another_workbook_shows_what_it_showed_last()
      throws IOException, InterruptedException {
    String rels =
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + "<Relationship Id=\"rId1\" TargetMode=\"External\" Target=\""
            + pipe().toUri()
            + "\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLinkPath\"/>"
            + "</Relationships>";
    Path file =
        changed("xl/worksheets/sheet1.xml", "<v>9</v>", "<f>[1]Sheet1!$A$1</f><v>7</v>", rels);
    assertThat(RecordsReader.defaults().read(file).takes()).isEqualTo(7);
  }

  @Test
  void a_worksheet_that_stands_outside_its_workbook_is_not_fetched()
      throws IOException, InterruptedException {
    Path file =
        changed(
            "xl/_rels/workbook.xml.rels",
            "Target=\"worksheets/sheet1.xml\"",
            "TargetMode=\"External\" Target=\"" + pipe().toUri() + "\"",
            "<Relationships/>");
    assertThatThrownBy(() -> RecordsReader.defaults().read(file))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("changed.xlsx");
  }
}
