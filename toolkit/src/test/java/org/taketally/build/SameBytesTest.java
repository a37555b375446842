package org.taketally.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TimeZone;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two builds give the same bytes: the last step of the program's jar is run twice, on the same
 * parts in another order, with other dates and in another time zone; and what makes the plain jar
 * and the list of parts the same each time is switched on.
 */
class SameBytesTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final long A_YEAR = 365L * 24 * 60 * 60 * 1000;

  @TempDir private Path folder;

  private static byte[] classFile(Class<?> type) throws IOException {
    String name = type.getSimpleName() + ".class";
    try (InputStream in = type.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Map<String, byte[]> parts() throws IOException {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put("META-INF/MANIFEST.MF", text("Manifest-Version: 1.0\n"));
    parts.put("META-INF/LICENSE", text("GPL"));
    parts.put("org/taketally/build/SlimJar.class", classFile(SlimJar.class));
    parts.put("org/taketally/build/SameBytesTest.class", classFile(SameBytesTest.class));
    parts.put("com/google/common/Unused.class", text("nobody names it"));
    parts.put("datasets/grafts.csv", text("grafts,takes\n10,8\n"));
    return parts;
  }

  private static void zip(Path jar, Map<String, byte[]> parts, List<String> order, long date)
      throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(jar))) {
      for (String name : order) {
        ZipEntry entry = new ZipEntry(name);
        entry.setTime(date);
        zip.putNextEntry(entry);
        zip.write(parts.get(name));
        zip.closeEntry();
      }
    }
  }

  /** A program's jar and a library with a licence of its own, put together by the build's step. */
  private byte[] built(String name, boolean reversed, String zone) throws IOException {
    TimeZone before = TimeZone.getDefault();
    TimeZone.setDefault(TimeZone.getTimeZone(zone));
    try {
      Path place = Files.createDirectories(folder.resolve(name));
      Map<String, byte[]> parts = parts();
      List<String> order = new ArrayList<>(parts.keySet());
      if (reversed) {
        Collections.reverse(order);
      }
      long date = System.currentTimeMillis() - (reversed ? A_YEAR : 0);
      Path jar = place.resolve("taketally.jar");
      zip(jar, parts, order, date);
      Path library = place.resolve("grafting-1.0.jar");
      zip(library, Map.of("LICENSE.txt", text("MIT")), List.of("LICENSE.txt"), date);
      Path list = Files.writeString(place.resolve("libraries.txt"), library.toString());
      SlimJar.main(new String[] {jar.toString(), list.toString()});
      return Files.readAllBytes(jar);
    } finally {
      TimeZone.setDefault(before);
    }
  }

  @Test
  void the_programs_jar_is_the_same_whatever_order_and_dates_its_parts_have() throws IOException {
    byte[] first = built("first", false, "UTC");
    assertThat(first).isEqualTo(built("second", true, "Pacific/Auckland"));
    assertThat(new String(first, StandardCharsets.ISO_8859_1))
        .contains("META-INF/licences/grafting-1.0/LICENSE.txt")
        .doesNotContain("Unused.class");
  }

  /** Maven's plugins sort entries and date them alike where a date of the build is given. */
  @Test
  void the_other_steps_are_told_to_give_the_same_bytes() throws IOException {
    assertThat(Files.readString(ROOT.resolve("pom.xml")))
        .containsPattern(
            "<project\\.build\\.outputTimestamp>\\d{4}-\\d\\d-\\d\\dT[\\d:]{8}Z</project");
    assertThat(Files.readString(ROOT.resolve("toolkit/pom.xml")))
        .contains("<includeBomSerialNumber>false</includeBomSerialNumber>")
        .doesNotContain("${maven.build.timestamp}", "buildnumber-maven-plugin");
  }
}
