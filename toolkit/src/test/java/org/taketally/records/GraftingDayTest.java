package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was grafted in one go is told apart with and without a column for the site. */
class GraftingDayTest {

  @TempDir private Path folder;

  @Test
  void sheets_of_one_site_need_no_column_for_it() throws IOException {
    assertThat(
            days(
                """
                cultivar,rootstock,graft_date,takes
                Orrin,Pellin,2025-03-01,1
                Orrin,Pellin,2025-03-02,0
                """))
        .containsExactly("2025-03-01", "2025-03-02");
  }

  @Test
  void days_at_two_sites_are_two() throws IOException {
    assertThat(
            days(
                """
                cultivar,rootstock,site,graft_date,takes
                Orrin,Pellin,Cove Lane,2025-03-01,1
                Orrin,Pellin,Ridge Farm,2025-03-01,0
                """))
        .containsExactly("Cove Lane 2025-03-01", "Ridge Farm 2025-03-01");
  }

  private List<String> days(String csv) throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), csv);
    return RecordsReader.defaults()
        .read(List.of(sheet))
        .frame()
        .stringColumn("grafting_day")
        .asList();
  }
}
