package org.taketally.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** What is asked of the folder of a file, and of the place itself, before and after writing. */
final class Folders {

  private Folders() {}

  /** Makes a folder's list of names last, where the system can. */
  static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException notOnThisSystem) {
      // renames are in order without it; only a power cut could undo the last of them
    }
  }

  /** The folder a file stands in; empty for the working folder. */
  static Path of(Path file) {
    return file.getParent() == null ? Path.of("") : file.getParent();
  }

  static void requireNoFile(Path folder) throws WouldReplace {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new WouldReplace(
          "%s is a file, and a folder of that name was to be made; choose another name"
              .formatted(folder));
    }
  }

  static void make(Path folder) throws IOException {
    requireNoFile(folder);
    if (!Files.isDirectory(folder)) {
      Files.createDirectories(folder);
    }
  }

  /** Whether it is there, but neither file nor folder: a terminal, a pipe. */
  static boolean isDevice(Path file) {
    return Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file);
  }

  static void deleteIfEmpty(Path folder) throws IOException {
    try {
      Files.deleteIfExists(folder);
    } catch (DirectoryNotEmptyException inUse) {
      // somebody else's files are in it by now
    }
  }
}
