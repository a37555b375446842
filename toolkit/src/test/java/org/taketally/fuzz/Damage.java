package org.taketally.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Changes files as accidents and attackers do: bits, cuts, doubled parts, and words that bite. */
final class Damage {

  private static final List<String> WORDS =
      List.of(
          "\"",
          "\"\"",
          ",",
          ";",
          "\t",
          "\r",
          "\n",
          "\r\n",
          "\u0000",
          "\uFEFF",
          "\u202E",
          "'",
          "=1+1",
          "{",
          "}",
          "[",
          "]",
          ":",
          "null",
          "true",
          "-1",
          "0",
          "1e999",
          "1e99999999999",
          "NaN",
          "1000000000",
          "99999999999999999999",
          "12 of 15",
          "31.02.2024",
          "0000-00-00",
          "+999999-01-01",
          "%",
          "100%",
          "1,000",
          "1.000",
          "*",
          "*a*a*a*a*a*b",
          "dd{MM}yyyy",
          "yyyy",
          "d'M'y",
          "#",
          "Tag",
          "tag",
          "cultivar",
          "Cultivar",
          "grafts",
          "takes",
          "outcome",
          "rootstock",
          "record",
          "set_aside_file",
          "set_aside_line",
          "set_aside_extra",
          "set_aside_reasons",
          "pairing",
          "grafting_day",
          "alive",
          "assessed_date",
          "share",
          "percent",
          "F",
          "UTF-16",
          "windows-1252",
          "t=\"s\"",
          "t=\"d\"",
          "r=\"XFE1\"",
          "r=\"ZZZZZZ1\"",
          "r=\"A99999999\"",
          "s=\"77\"",
          "<v>",
          "</c>",
          "<!DOCTYPE x [<!ENTITY a \"b\">]>",
          "&a;",
          "&#0;",
          "<![CDATA[",
          "\\u0000",
          "\\ud800",
          "1970-01-01T00:00:00",
          "\ud83c\udf31",
          "\ud800",
          "e\u0301",
          "İ",
          "ß",
          "cell_type",
          "outputs",
          "nbformat",
          "source",
          "metadata");

  private static final int MOST_CHANGES = 6;

  private final Random random;

  Damage(long seed) {
    random = new Random(seed);
  }

  int pick(int bound) {
    return random.nextInt(bound);
  }

  /** The bytes with one to six changes. */
  byte[] bytes(byte[] whole) {
    byte[] changed = whole;
    for (int i = 1 + pick(MOST_CHANGES); i > 0; i--) {
      changed = changed.length == 0 ? word() : once(changed);
    }
    return changed;
  }

  private byte[] word() {
    return WORDS.get(pick(WORDS.size())).getBytes(StandardCharsets.UTF_8);
  }

  private byte[] once(byte[] bytes) {
    int from = pick(bytes.length);
    int to = Math.min(bytes.length, from + pick(40));
    return switch (pick(8)) {
      case 0 -> {
        byte[] flipped = bytes.clone();
        flipped[from] ^= (byte) (1 << pick(8));
        yield flipped;
      }
      case 1 -> joined(bytes, from, new byte[0], to);
      case 2 -> joined(bytes, to, java.util.Arrays.copyOfRange(bytes, from, to), to);
      case 3 -> java.util.Arrays.copyOf(bytes, from);
      case 4 -> joined(bytes, from, word(), to);
      default -> joined(bytes, from, word(), from);
    };
  }

  private static byte[] joined(byte[] bytes, int end, byte[] between, int start) {
    byte[] all = new byte[end + between.length + bytes.length - start];
    System.arraycopy(bytes, 0, all, 0, end);
    System.arraycopy(between, 0, all, end, between.length);
    System.arraycopy(bytes, start, all, end + between.length, bytes.length - start);
    return all;
  }

  /** A zip archive with one of its parts changed, which bare bytes rarely reach. */
  byte[] part(byte[] archive) throws IOException {
    List<String> names = new ArrayList<>();
    List<byte[]> parts = new ArrayList<>();
    Path whole = Files.write(Files.createTempFile("whole", ".zip"), archive);
    try (ZipFile zip = new ZipFile(whole.toFile())) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        names.add(entry.getName());
        parts.add(zip.getInputStream(entry).readAllBytes());
      }
    }
    Files.delete(whole);
    int hit = pick(parts.size());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (int i = 0; i < parts.size(); i++) {
        zip.putNextEntry(new ZipEntry(names.get(i)));
        zip.write(i == hit ? bytes(parts.get(i)) : parts.get(i));
        zip.closeEntry();
      }
    }
    return out.toByteArray();
  }
}
