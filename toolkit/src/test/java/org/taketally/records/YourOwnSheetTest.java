package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.taketally.records.dictionary.SheetDictionary;

/** Every sheet of docs/your-own-sheet.md is read by its dictionary to the counts printed there. */
class YourOwnSheetTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root"), "docs", "your-own-sheet.md");

  @TempDir private Path folder;

  static List<String> sections() throws IOException {
    String[] parts = Files.readString(PAGE).split("\n## ", -1);
    return Arrays.asList(parts).subList(1, parts.length);
  }

  /** The indented blocks: the sheet, then its dictionary. */
  private static List<String> blocks(String section) {
    List<String> blocks = new ArrayList<>();
    StringBuilder block = new StringBuilder();
    for (String line : (section + "\n").split("\n", -1)) {
      if (line.startsWith("    ")) {
        block.append(line.substring(4)).append("\n");
      } else if (!block.isEmpty()) {
        blocks.add(block.toString());
        block.setLength(0);
      }
    }
    return blocks;
  }

  @ParameterizedTest
  @MethodSource("sections")
  void reads_to_the_counts_printed(String section) throws IOException {
    List<String> blocks = blocks(section);
    assertThat(blocks).hasSize(2);
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), blocks.get(0));
    RecordsReader reader =
        RecordsReader.defaults()
            .withToday(LocalDate.of(2026, 11, 25))
            .withDictionary(SheetDictionary.parse("dictionary.json", blocks.get(1)));
    GraftRecords records = reader.read(sheet);
    assertThat(section)
        .contains(
            "**%d rows kept, %d set aside; %d grafts, %d took.**"
                .formatted(
                    records.frame().rowCount(),
                    records.setAside().size(),
                    records.grafts(),
                    records.takes()));
    records.check().requireSettled();
  }

  @Test
  void there_are_ten() throws IOException {
    assertThat(sections()).hasSize(10);
  }

  @Test
  void what_the_page_says_beside_the_counts_is_so() throws IOException {
    assertThat(read(1, "").check().unsettled()).hasSize(1);
    assertThat(read(7, null).frame().dateColumn("graft_date").asList())
        .startsWith(LocalDate.of(2025, 3, 4), LocalDate.of(2025, 3, 5));
    assertThat(read(4, null).frame().doubleColumn("scion_diameter_mm").get(1)).isEqualTo(6.35);
    assertThat(read(9, null).batches()).containsExactly("Fridge");
    GraftRecords counted = read(8, null);
    assertThat(
            reader(8, null).assessments(List.of(folder.resolve("sheet.csv")), counted).histories())
        .hasSize(4);
  }

  /** A section's sheet; an empty text takes the meaning of blanks out of its dictionary. */
  private GraftRecords read(int section, String blank) throws IOException {
    Files.writeString(folder.resolve("sheet.csv"), blocks(sections().get(section)).get(0));
    return reader(section, blank).read(folder.resolve("sheet.csv"));
  }

  private static RecordsReader reader(int section, String blank) throws IOException {
    String dictionary = blocks(sections().get(section)).get(1);
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 25))
        .withDictionary(
            SheetDictionary.parse(
                "dictionary.json",
                blank == null
                    ? dictionary
                    : dictionary.replace(",\n  \"blank_result\": \"failed\"", blank)));
  }
}
