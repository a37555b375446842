package org.taketally.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What was written into a folder, with a checksum of each file, kept in the folder itself: so that
 * a file someone changed since is told from one that may be written anew. The format is that of
 * {@code sha256sum}, which can check it.
 */
final class Ledger {

  static final String FILE = ".taketally-written";

  private static final String SET = "# set: ";
  private static final String OPENING =
      "# Files written by Taketally, each with its checksum (sha256sum -c "
          + FILE
          + "). A file changed since is never written over unasked.\n";
  private static final int BUFFER = 1 << 16;

  private record Entry(String set, String checksum) {}

  private final Map<String, Entry> entries;

  private Ledger(Map<String, Entry> entries) {
    this.entries = entries;
  }

  /** The ledger of a folder; an empty one where there is none or none that can be understood. */
  static Ledger of(Path folder) throws IOException {
    return read(folder.resolve(FILE));
  }

  static Ledger empty() {
    return new Ledger(Map.of());
  }

  static Ledger read(Path file) throws IOException {
    Map<String, Entry> entries = new LinkedHashMap<>();
    if (Files.isRegularFile(file)) {
      String set = "";
      for (String line : lines(file)) {
        if (line.startsWith(SET)) {
          set = line.substring(SET.length());
        } else if (line.matches("[0-9a-f]{64}  .+")) {
          entries.put(line.substring(66), new Entry(set, line.substring(0, 64)));
        }
      }
    }
    return new Ledger(entries);
  }

  private static List<String> lines(Path file) throws IOException {
    try (Stream<String> lines = Files.lines(file, StandardCharsets.UTF_8)) {
      return lines.toList();
    } catch (java.io.UncheckedIOException e) {
      if (e.getCause() instanceof MalformedInputException) {
        return List.of();
      }
      throw e.getCause();
    }
  }

  /** This ledger with the files of a set in place of those it had before. */
  Ledger with(String set, Map<String, String> checksums) {
    Map<String, Entry> all = new LinkedHashMap<>(entries);
    all.values().removeIf(entry -> entry.set().equals(set));
    checksums.forEach((name, checksum) -> all.put(name, new Entry(set, checksum)));
    return new Ledger(all);
  }

  /** Names of the files a set had when it was written last. */
  List<String> names(String set) {
    return entries.entrySet().stream()
        .filter(entry -> entry.getValue().set().equals(set))
        .map(Map.Entry::getKey)
        .toList();
  }

  boolean knows(Path file) {
    return entries.containsKey(file.getFileName().toString());
  }

  /** Whether a file holds what was written into it. */
  boolean isAsWritten(Path file) throws IOException {
    Entry entry = entries.get(file.getFileName().toString());
    return entry != null
        && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && entry.checksum().equals(checksum(file));
  }

  String text() {
    Map<String, StringBuilder> sets = new TreeMap<>();
    for (Map.Entry<String, Entry> one : new TreeMap<>(entries).entrySet()) {
      if (one.getKey().lines().count() == 1) {
        sets.computeIfAbsent(FileNames.safe(one.getValue().set()), set -> new StringBuilder())
            .append(one.getValue().checksum() + "  " + one.getKey() + "\n");
      }
    }
    StringBuilder text = new StringBuilder(OPENING);
    sets.forEach((set, lines) -> text.append(SET).append(set).append('\n').append(lines));
    return text.toString();
  }

  static String checksum(Path file) throws IOException {
    MessageDigest digest = digest();
    byte[] buffer = new byte[BUFFER];
    try (InputStream in = Files.newInputStream(file)) {
      for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
        digest.update(buffer, 0, count);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
