package org.taketally.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Files that belong together. They are written beside their places first, down to the disk, and
 * then take their names in one go: whoever looks finds all the old ones or all the new ones, and
 * after a full disk or a lost process the old ones. What a person made or changed is never written
 * over, unless the {@link Guard} says so. Files that an earlier set of the same name had and this
 * one has not are taken away with it.
 *
 * <p>A process that ends while names change hands (some thousandths of a second) leaves finished
 * files beside the old ones; whatever writes into the folder next puts them in place first.
 */
public final class FileSet {

  private final Path folder;
  private final String name;
  private final Guard guard;
  private final Map<String, Content> files = new LinkedHashMap<>();
  private final Map<String, String> read = new LinkedHashMap<>();

  private FileSet(Path folder, String name, Guard guard) {
    this.folder = folder;
    this.name = name;
    this.guard = guard;
  }

  /**
   * An empty set.
   *
   * @param folder where the files go; made when they are written
   * @param name tells it from other sets in the same folder, e.g. {@code summary}
   * @param guard what may be written over
   * @return the set
   */
  public static FileSet in(Path folder, String name, Guard guard) {
    return new FileSet(folder, FileNames.safe(name), guard);
  }

  /**
   * A set of one file, which names it. What is no file, such as {@code /dev/stdout}, is written to
   * as it is.
   *
   * @param file where to
   * @param guard what may be written over
   * @param content what it is to hold
   * @throws WouldReplace if something stands there that may not be written over
   * @throws IOException if it can't be written
   */
  public static void write(Path file, Guard guard, Content content) throws IOException {
    if (Folders.isDevice(file)) {
      SafeFile.write(file, content);
      return;
    }
    FileSet alone = in(Folders.of(file), file.getFileName().toString(), guard);
    alone.files.put(file.getFileName().toString(), content);
    alone.write();
  }

  /**
   * Adds a file.
   *
   * @param fileName its name in the folder; signs that a file system could trip over become {@code
   *     _}, and a name that is there already gets a number
   * @param content what it is to hold
   * @return this set
   */
  public FileSet add(String fileName, Content content) {
    files.put(FileNames.distinct(fileName, files.keySet()), content);
    return this;
  }

  /**
   * Adds a text file.
   *
   * @param fileName as in {@link #add(String, Content)}
   * @param text what it is to hold, written as UTF-8
   * @return this set
   */
  public FileSet add(String fileName, String text) {
    return add(fileName, Content.text(text));
  }

  /**
   * Marks a file of the folder that is about to be read, to be written anew: if anybody writes it
   * meanwhile, nothing is written.
   *
   * @param fileName its name in the folder; it needn't be there
   * @return this set
   * @throws IOException if it can't be read
   */
  public FileSet asRead(String fileName) throws IOException {
    read.put(fileName, state(fileName));
    return this;
  }

  /** Checksum of a file as it is; empty if there is none. */
  private String state(String fileName) throws IOException {
    Path file = folder.resolve(fileName);
    return Files.isRegularFile(file) ? Ledger.checksum(file) : "";
  }

  private void requireUnchanged() throws IOException {
    for (Map.Entry<String, String> one : read.entrySet()) {
      if (!one.getValue().equals(state(one.getKey()))) {
        throw new WouldReplace(
            "%s was changed while this was worked out, perhaps by another command, so nothing was written; run the command again"
                .formatted(folder.resolve(one.getKey())));
      }
    }
  }

  /**
   * Refuses early what {@link #write()} would refuse, before anything long is worked out.
   *
   * @param fileNames names of files that will be added
   * @throws WouldReplace if one may not be written over
   * @throws IOException if the folder can't be read
   */
  public void requireFree(String... fileNames) throws IOException {
    Folders.requireNoFile(folder);
    Switch.finishLeftovers(folder);
    Ledger ledger = Ledger.of(folder);
    guard.requireNotRead(folder.resolve(Ledger.FILE));
    for (String fileName : fileNames) {
      guard.require(folder.resolve(fileName), ledger);
    }
  }

  /**
   * Writes all files, or none.
   *
   * @return where they are, in the order added
   * @throws WouldReplace if one may not be written over
   * @throws IOException if one can't be written; then all are as they were
   */
  public List<Path> write() throws IOException {
    return write(Mover.ATOMIC);
  }

  List<Path> write(Mover mover) throws IOException {
    boolean made = !Files.exists(folder);
    Folders.make(folder);
    try {
      String[] names = files.keySet().toArray(String[]::new);
      requireFree(names);
      try (Switch staged = Switch.begin(folder, mover)) {
        Map<String, String> checksums = new LinkedHashMap<>();
        for (Map.Entry<String, Content> file : files.entrySet()) {
          checksums.put(file.getKey(), staged.stage(file.getKey(), file.getValue()));
        }
        requireFree(names);
        requireUnchanged();
        Ledger before = Ledger.of(folder);
        staged.commit(before.with(name, checksums), outdated(before));
      }
    } catch (IOException | RuntimeException failed) {
      if (made) {
        Folders.deleteIfEmpty(folder);
      }
      throw failed;
    }
    return files.keySet().stream().map(folder::resolve).toList();
  }

  /** Files of this set when it was written last, not of it any more, and nobody's work since. */
  private List<String> outdated(Ledger before) throws IOException {
    List<String> outdated = new ArrayList<>();
    for (String old : before.names(name)) {
      Path file = folder.resolve(old);
      boolean gone = !files.containsKey(old) && Files.exists(file, LinkOption.NOFOLLOW_LINKS);
      boolean read = false;
      for (Path input : guard.inputs()) {
        read |= gone && Files.exists(input) && Files.isSameFile(input, file);
      }
      if (gone && !read && before.isAsWritten(file)) {
        outdated.add(old);
      }
    }
    return outdated;
  }
}
