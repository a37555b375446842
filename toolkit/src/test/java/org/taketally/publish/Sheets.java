package org.taketally.publish;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** Sheets of made-up records, written to a folder and read back the way users' sheets are. */
final class Sheets {

  private static final String HEADER =
      "record,season,site,grafter,cultivar,rootstock,graft_date,assessed_date,storage_temp_c,grafts,takes,notes\n";

  private Sheets() {}

  static GraftRecords read(Path folder, String text) {
    try {
      Path file = Files.writeString(folder.resolve("grafts.csv"), text);
      return RecordsReader.defaults().read(List.of(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Three seasons in which six members (Qmember0 to Qmember5) at sites of their own graft cultivars
   * Cv0 to Cv8 on stocks St0 to St3: some cultivars by many, some by one, one mostly by one.
   */
  static String circle(long seed) {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < 90; i++) {
      int cultivar = (int) (9 * Math.pow(random.nextDouble(), 1.6));
      int member = cultivar > 5 ? cultivar % 6 : random.nextInt(6);
      int season = 2022 + random.nextInt(3);
      int grafts = 1 + random.nextInt(8);
      int takes = cultivar == 8 ? 0 : random.nextInt(grafts + 1);
      text.append(
          "r%d,%d,Qsite%d,Qmember%d,Cv%d,St%d,%d-03-10,%d-06-15,%d,%d,%d,Qnote%d\n"
              .formatted(
                  i,
                  season,
                  member,
                  member,
                  cultivar,
                  random.nextInt(4),
                  season,
                  season,
                  3 + random.nextInt(10),
                  grafts,
                  takes,
                  i));
    }
    return text.toString();
  }

  /** The same without who grafted and where. */
  static String nameless(long seed) {
    return circle(seed).replaceAll("Qmember\\d", "").replaceAll("Qsite\\d", "");
  }

  /** Sixty cultivars of forty letters each, most of them hard, grafted by four members each. */
  static String sixtyLongNames() {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < 240; i++) {
      String cultivar = "Wommaway Mammoth of the Lower Harbour %03d".formatted(i / 4);
      text.append(
          "r%d,2024,Qsite%d,Qmember%d,%s,St%d,2024-03-10,2024-06-15,5,10,%d,\n"
              .formatted(
                  i, i % 4, i % 4, cultivar.substring(cultivar.length() - 40), i % 3, 1 + i / 40));
    }
    return text.toString();
  }
}
