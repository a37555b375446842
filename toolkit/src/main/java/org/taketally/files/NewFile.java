package org.taketally.files;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/**
 * A file on its way to its place: written beside it, and kept only when it is whole. Closed without
 * {@link #keep()}, nothing has changed.
 */
public final class NewFile implements Closeable {

  private static final int BUFFER = 1 << 16;

  private final Path beside;
  private final Path place;
  private final FileChannel channel;
  private final OutputStream out;
  private boolean kept;

  private NewFile(Path beside, Path place, FileChannel channel) {
    this.beside = beside;
    this.place = place;
    this.channel = channel;
    this.out =
        new BufferedOutputStream(new Placed(Channels.newOutputStream(channel), place), BUFFER);
  }

  /**
   * Begins a file.
   *
   * @param file its place, replaced when the new one is kept; its folder must exist, and a link is
   *     followed; what is no file, such as {@code /dev/stdout}, is written to at once
   * @return the file
   * @throws IOException if none can be begun
   */
  public static NewFile of(Path file) throws IOException {
    if (Folders.isDevice(file)) {
      return new NewFile(file, file, FileChannel.open(file, StandardOpenOption.WRITE));
    }
    Path place = Files.exists(file) ? file.toRealPath() : file;
    return at(Folders.of(place).resolve(".taketally-file-" + Owner.mark()), place);
  }

  /**
   * A file that goes from one given place to another, with the permissions of what stands there.
   */
  static NewFile at(Path beside, Path place) throws IOException {
    FileChannel channel =
        FileChannel.open(beside, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
    PosixFileAttributeView view = Files.getFileAttributeView(beside, PosixFileAttributeView.class);
    if (view != null && Files.exists(place)) {
      view.setPermissions(Files.getPosixFilePermissions(place));
    }
    return new NewFile(beside, place, channel);
  }

  /**
   * Where its content goes.
   *
   * @return a stream, not to be closed
   */
  public OutputStream out() {
    return out;
  }

  /** Leaves the file beside its place, whole and down on the disk. */
  void stay() throws IOException {
    out.flush();
    if (!isDevice()) {
      channel.force(true);
    }
    channel.close();
    kept = true;
  }

  /**
   * Puts the file in its place, whole.
   *
   * @throws IOException if it can't be written; then what stood there is as it was
   */
  public void keep() throws IOException {
    stay();
    kept = isDevice();
    if (!kept) {
      Mover.ATOMIC.move(beside, place);
      kept = true;
      Folders.force(Folders.of(place));
    }
  }

  private boolean isDevice() {
    return beside.equals(place);
  }

  @Override
  public void close() throws IOException {
    channel.close();
    if (!kept && !isDevice()) {
      Files.deleteIfExists(beside);
    }
  }

  /** Says of which file it is that something can't be written. */
  private static final class Placed extends FilterOutputStream {
    private final Path place;

    Placed(OutputStream out, Path place) {
      super(out);
      this.place = place;
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
      try {
        out.write(bytes, offset, length);
      } catch (FileSystemException alreadySaid) {
        throw alreadySaid;
      } catch (IOException failed) {
        IOException placed = new FileSystemException(place.toString(), null, failed.getMessage());
        placed.initCause(failed);
        throw placed;
      }
    }
  }
}
