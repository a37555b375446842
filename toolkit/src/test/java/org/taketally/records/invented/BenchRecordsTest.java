package org.taketally.records.invented;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/** The files of the benchmark are those the reference fits were made from, byte for byte. */
class BenchRecordsTest {

  private static String digest(BenchRecords.Size size) throws Exception {
    StringBuilder text = new StringBuilder();
    BenchRecords.write(size, 1, text);
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
  }

  /** Reference: SHA-256 of the file the reference fit S was made from (seed 1). */
  @Test
  void writes_the_small_file() throws Exception {
    assertThat(digest(BenchRecords.Size.S))
        .isEqualTo("6313f1424f52622c58382bc492811095621755510ae848cd2ddb4626c690dfb1");
  }

  /** Reference: SHA-256 of the file the reference fit M was made from (seed 1). */
  @Test
  void writes_the_middle_file() throws Exception {
    assertThat(digest(BenchRecords.Size.M))
        .isEqualTo("8b7979c9c33d4ddc7f051d688cf5c15a7dbd912d1fdb1448a54458932b93f977");
  }
}
