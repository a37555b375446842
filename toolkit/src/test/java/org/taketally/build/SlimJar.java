package org.taketally.build;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Enumeration;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Part of the build: takes classes that nothing refers to out of the program's jar, for the few
 * libraries that only other libraries use, and puts each library's licence and notice in. A class
 * counts as referred to if its name stands anywhere in a class that is kept, in a signature or a
 * text too. Entries are sorted and dated alike, so that two builds give the same bytes.
 */
public final class SlimJar {

  /** Libraries whose classes go unless referred to. */
  private static final Pattern TRIMMED =
      Pattern.compile(
          "(?:it/unimi/dsi/fastutil|com/google/common|org/apache/commons/compress)/[\\w/$]+");

  private static final Pattern LICENCE =
      Pattern.compile(
          "(?i)(META-INF/)?(licenses/)?[\\w.-]*(LICENSE|LICENCE|NOTICE|COPYING)[\\w.-]*");

  private static final LocalDateTime DATE = LocalDateTime.of(2026, 1, 1, 0, 0);
  private static final int UTF8 = 1;
  private static final int LONG = 5;
  private static final int DOUBLE = 6;

  private SlimJar() {}

  /** The jar, and the file that lists the libraries it was made from. */
  public static void main(String[] arguments) throws IOException {
    Path jar = Path.of(arguments[0]);
    Map<String, byte[]> entries = entries(jar);
    if (entries.keySet().removeAll(unused(entries))) {
      addLicences(entries, Files.readString(Path.of(arguments[1])).strip());
      Path slim = jar.resolveSibling("taketally-slim.jar");
      write(entries, slim);
      Files.move(slim, jar, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static Map<String, byte[]> entries(Path jar) throws IOException {
    Map<String, byte[]> entries = new TreeMap<>();
    try (ZipFile zip = new ZipFile(jar.toFile())) {
      Enumeration<? extends ZipEntry> all = zip.entries();
      while (all.hasMoreElements()) {
        ZipEntry entry = all.nextElement();
        if (!entry.isDirectory()) {
          try (InputStream in = zip.getInputStream(entry)) {
            entries.put(entry.getName(), in.readAllBytes());
          }
        }
      }
    }
    return entries;
  }

  /** Classes of the trimmed libraries that no kept class names. */
  static Set<String> unused(Map<String, byte[]> entries) throws IOException {
    Set<String> unused = new HashSet<>();
    Deque<String> kept = new ArrayDeque<>();
    for (String name : entries.keySet()) {
      boolean trimmed = name.endsWith(".class") && TRIMMED.matcher(stem(name)).matches();
      if (trimmed) {
        unused.add(name);
      } else {
        kept.add(name);
      }
    }
    while (!kept.isEmpty()) {
      for (String named : named(kept.remove(), entries)) {
        if (unused.remove(named)) {
          kept.add(named);
        }
      }
    }
    return unused;
  }

  private static String stem(String classFile) {
    return classFile.substring(0, classFile.length() - ".class".length());
  }

  private static Set<String> named(String name, Map<String, byte[]> entries) throws IOException {
    Set<String> named = new HashSet<>();
    if (name.endsWith(".class")) {
      for (String text : texts(entries.get(name))) {
        addNames(text, named);
      }
    } else if (name.startsWith("META-INF/services/")) {
      addNames(new String(entries.get(name), StandardCharsets.UTF_8), named);
    }
    return named;
  }

  private static void addNames(String text, Set<String> named) {
    if (text.contains("fastutil") || text.contains("common")) {
      Matcher matcher = TRIMMED.matcher(text.replace('.', '/'));
      while (matcher.find()) {
        named.add(matcher.group() + ".class");
      }
    }
  }

  /**
   * All texts in a class's pool of constants: names, signatures and strings.
   *
   * @see <a href="https://docs.oracle.com/javase/specs/jvms/se17/html/jvms-4.html#jvms-4.4">The
   *     constant pool</a>
   */
  static Set<String> texts(byte[] classFile) throws IOException {
    Set<String> texts = new HashSet<>();
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(classFile));
    in.skipNBytes(8);
    int count = in.readUnsignedShort();
    for (int i = 1; i < count; i++) {
      int tag = in.readUnsignedByte();
      switch (tag) {
        case UTF8 -> texts.add(in.readUTF());
        case LONG, DOUBLE -> {
          in.skipNBytes(8);
          i++;
        }
        case 7, 8, 16, 19, 20 -> in.skipNBytes(2);
        case 15 -> in.skipNBytes(3);
        default -> in.skipNBytes(4);
      }
    }
    return texts;
  }

  private static void addLicences(Map<String, byte[]> entries, String libraries)
      throws IOException {
    for (String library : libraries.split(Pattern.quote(java.io.File.pathSeparator))) {
      String name = Path.of(library).getFileName().toString().replaceFirst("\\.jar$", "");
      for (Map.Entry<String, byte[]> entry : entries(Path.of(library)).entrySet()) {
        if (LICENCE.matcher(entry.getKey()).matches() && !entry.getKey().endsWith(".class")) {
          String file = Path.of(entry.getKey()).getFileName().toString();
          entries.put("META-INF/licences/" + name + "/" + file, entry.getValue());
        }
      }
    }
  }

  /** The manifest first, as readers of jars expect. */
  private static void write(Map<String, byte[]> entries, Path jar) throws IOException {
    try (OutputStream file = Files.newOutputStream(jar);
        ZipOutputStream zip = new ZipOutputStream(file)) {
      String manifest = "META-INF/MANIFEST.MF";
      add(manifest, entries.remove(manifest), zip);
      for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
        add(entry.getKey(), entry.getValue(), zip);
      }
    }
  }

  private static void add(String name, byte[] bytes, ZipOutputStream zip) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(DATE);
    zip.putNextEntry(entry);
    zip.write(bytes);
    zip.closeEntry();
  }
}
