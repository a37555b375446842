package org.taketally.files;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * New files beside the old ones, until all take their places. The folder of new files is named
 * {@link #NEW} while they are written; renamed to {@link #READY}, they count as written, and
 * whoever comes next finishes what a lost process could not.
 */
final class Switch implements AutoCloseable {

  static final String NEW = ".taketally-new-";
  static final String READY = ".taketally-ready-";

  private static final String FILES = "files";
  private static final String BACKUP = "backup";
  private static final String OUTDATED = "outdated";
  private static final String REPLACED = "replaced";

  private final Path folder;
  private final Mover mover;
  private Path staging;

  private Switch(Path folder, Mover mover, Path staging) {
    this.folder = folder;
    this.mover = mover;
    this.staging = staging;
  }

  static Switch begin(Path folder, Mover mover) throws IOException {
    Path staging = folder.resolve(NEW + Owner.mark());
    Files.createDirectories(staging.resolve(FILES));
    return new Switch(folder, mover, staging);
  }

  /** Writes a new file down to the disk; gives its checksum. */
  String stage(String name, Content content) throws IOException {
    Path file = staging.resolve(FILES).resolve(name);
    stage(file, folder.resolve(name), content);
    return Ledger.checksum(file);
  }

  private static void stage(Path staged, Path place, Content content) throws IOException {
    try (NewFile file = NewFile.at(staged, place)) {
      content.writeTo(file.out());
      file.stay();
    }
  }

  /** All new files take their places, the outdated ones go; or all stays as it was. */
  void commit(Ledger ledger, List<String> outdated) throws IOException {
    note(OUTDATED, String.join("\n", outdated) + "\n");
    note(REPLACED, replaced().text());
    note(Ledger.FILE, ledger.text());
    Folders.force(staging.resolve(FILES));
    backUp(outdated);
    Path ready = folder.resolve(READY + staging.getFileName().toString().substring(NEW.length()));
    mover.move(staging, ready);
    staging = ready;
    Folders.force(folder);
    List<String> names = names(staging.resolve(FILES));
    try {
      place(names, outdated);
    } catch (IOException inUse) {
      restore(names, outdated);
      throw inUse;
    }
    Folders.force(folder);
  }

  private void note(String name, String text) throws IOException {
    stage(staging.resolve(name), folder.resolve(Ledger.FILE), Content.text(text));
  }

  /** What stood in the places of the new files, so that who finishes knows it again. */
  private Ledger replaced() throws IOException {
    Map<String, String> checksums = new LinkedHashMap<>();
    for (String name : names(staging.resolve(FILES))) {
      Path old = folder.resolve(name);
      if (Files.isRegularFile(old, LinkOption.NOFOLLOW_LINKS)) {
        checksums.put(name, Ledger.checksum(old));
      }
    }
    return Ledger.empty().with(REPLACED, checksums);
  }

  private void place(List<String> names, List<String> outdated) throws IOException {
    for (String name : names) {
      mover.move(staging.resolve(FILES).resolve(name), folder.resolve(name));
    }
    for (String name : outdated) {
      Files.deleteIfExists(folder.resolve(name));
    }
    mover.move(staging.resolve(Ledger.FILE), folder.resolve(Ledger.FILE));
  }

  private void backUp(List<String> outdated) throws IOException {
    Path backup = Files.createDirectory(staging.resolve(BACKUP));
    List<String> names = new ArrayList<>(names(staging.resolve(FILES)));
    names.addAll(outdated);
    for (String name : names) {
      Path old = folder.resolve(name);
      if (Files.exists(old, LinkOption.NOFOLLOW_LINKS)) {
        copy(old, backup.resolve(name));
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try {
      Files.createLink(to, from);
    } catch (IOException | UnsupportedOperationException noLinksHere) {
      Files.copy(from, to, LinkOption.NOFOLLOW_LINKS, StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  private void restore(List<String> names, List<String> outdated) throws IOException {
    List<String> all = new ArrayList<>(names);
    all.addAll(outdated);
    for (String name : all) {
      Path old = staging.resolve(BACKUP).resolve(name);
      boolean placed = !Files.exists(staging.resolve(FILES).resolve(name));
      if (placed && Files.exists(old, LinkOption.NOFOLLOW_LINKS)) {
        Files.move(old, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
      } else if (placed) {
        Files.deleteIfExists(folder.resolve(name));
      }
    }
  }

  /** Puts in place what lost processes had finished, and takes away what they had not. */
  static void finishLeftovers(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    for (String name : names(folder)) {
      Path left = folder.resolve(name);
      if (name.startsWith(READY) && Owner.isGone(name.substring(READY.length()))) {
        finish(folder, left);
      } else if (name.startsWith(NEW) && Owner.isGone(name.substring(NEW.length()))) {
        delete(left);
      }
    }
  }

  private static void finish(Path folder, Path ready) throws IOException {
    Ledger before = Ledger.of(folder);
    Ledger replaced = Ledger.read(ready.resolve(REPLACED));
    Ledger after = Ledger.read(ready.resolve(Ledger.FILE));
    for (String name : names(ready.resolve(FILES))) {
      Path place = folder.resolve(name);
      if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)
          || replaced.isAsWritten(place)
          || after.isAsWritten(place)) {
        Mover.ATOMIC.move(ready.resolve(FILES).resolve(name), place);
      }
    }
    if (Files.exists(ready.resolve(Ledger.FILE))) {
      for (String name : Files.readAllLines(ready.resolve(OUTDATED))) {
        if (!name.isEmpty() && before.isAsWritten(folder.resolve(name))) {
          Files.delete(folder.resolve(name));
        }
      }
      Mover.ATOMIC.move(ready.resolve(Ledger.FILE), folder.resolve(Ledger.FILE));
    }
    delete(ready);
    Folders.force(folder);
  }

  private static List<String> names(Path folder) throws IOException {
    List<String> names = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
        for (Path file : files) {
          names.add(file.getFileName().toString());
        }
      }
    }
    Collections.sort(names);
    return names;
  }

  private static void delete(Path staging) throws IOException {
    for (String part : List.of(FILES, BACKUP)) {
      for (String name : names(staging.resolve(part))) {
        Files.deleteIfExists(staging.resolve(part).resolve(name));
      }
      Files.deleteIfExists(staging.resolve(part));
    }
    for (String name : names(staging)) {
      Files.deleteIfExists(staging.resolve(name));
    }
    Files.deleteIfExists(staging);
  }

  @Override
  public void close() throws IOException {
    delete(staging);
  }
}
