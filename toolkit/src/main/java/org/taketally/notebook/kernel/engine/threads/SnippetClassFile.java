package org.taketally.notebook.kernel.engine.threads;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Modifier;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A class file compiled from a cell: which classes it names, and the two changes made to it before
 * it is loaded.
 *
 * @see <a href="https://docs.oracle.com/javase/specs/jvms/se17/html/jvms-4.html">The class file
 *     format, Java Virtual Machine Specification</a>
 */
final class SnippetClassFile {

  private static final int UTF8 = 1;
  private static final int LONG = 5;
  private static final int DOUBLE = 6;
  private static final int CLASS = 7;
  private static final int METHOD = 10;
  private static final int COUNT_AT = 8;

  private byte[] bytes;

  /** Place of each constant's tag; 0 where there is no constant. */
  private final List<Integer> constants = new ArrayList<>(List.of(0));

  /** Where the constants end and the class's access flags begin. */
  private final int constantsEnd;

  SnippetClassFile(byte[] original) {
    bytes = original.clone();
    int count = unsigned(COUNT_AT);
    int at = COUNT_AT + 2;
    while (constants.size() < count) {
      constants.add(at);
      int tag = bytes[at];
      if (tag == LONG || tag == DOUBLE) {
        constants.add(0);
      }
      at += 1 + constantLength(tag, at);
    }
    constantsEnd = at;
  }

  private int constantLength(int tag, int at) {
    return switch (tag) {
      case UTF8 -> 2 + unsigned(at + 1);
      case CLASS, 8, 16, 19, 20 -> 2; // class, string, method type, module, package
      case 15 -> 3; // method handle
      case LONG, DOUBLE -> 8;
      default -> 4;
    };
  }

  private int unsigned(int at) {
    return Short.toUnsignedInt(ByteBuffer.wrap(bytes).getShort(at));
  }

  private String text(int constant) {
    int at = constants.get(constant);
    return new String(bytes, at + 3, unsigned(at + 1), StandardCharsets.UTF_8);
  }

  byte[] bytes() {
    return bytes.clone();
  }

  /** Binary names, with dots, of all classes named. */
  Set<String> classNames() {
    Set<String> names = new LinkedHashSet<>();
    for (int place : constants) {
      if (place > 0 && bytes[place] == CLASS) {
        names.add(text(unsigned(place + 1)).replace('/', '.'));
      }
    }
    return names;
  }

  /**
   * Makes everything public that isn't private, because classes of one package are spread over
   * several class loaders, between which package access doesn't reach.
   */
  void openToOtherLoaders() {
    open(constantsEnd);
    int at = constantsEnd + 6; // access, this class, super class
    at += 2 + 2 * unsigned(at); // interfaces
    at = openMembers(at); // fields
    openMembers(at); // methods
  }

  private int openMembers(int countAt) {
    int at = countAt + 2;
    for (int member = unsigned(countAt); member > 0; member--) {
      open(at);
      int attributes = unsigned(at + 6); // after access, name, type
      at += 8;
      for (; attributes > 0; attributes--) {
        at += 6 + ByteBuffer.wrap(bytes).getInt(at + 2);
      }
    }
    return at;
  }

  private void open(int accessAt) {
    int access = unsigned(accessAt);
    if ((access & Modifier.PRIVATE) == 0) {
      int open = (access & ~Modifier.PROTECTED) | Modifier.PUBLIC;
      ByteBuffer.wrap(bytes).putShort(accessAt, (short) open);
    }
  }

  /**
   * Sends every call of a static method to another class, same name and type. To be done last: it
   * moves what follows the constants.
   *
   * @param owner internal name of the class that declares the method, with slashes
   * @param method its name
   * @param substitute internal name of the class to call instead
   */
  void sendCalls(String owner, String method, String substitute) {
    List<Integer> calls = calls(owner, method);
    if (calls.isEmpty()) {
      return;
    }
    int count = constants.size();
    ByteArrayOutputStream result = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(result)) {
      ByteBuffer patched = ByteBuffer.wrap(bytes);
      calls.forEach(place -> patched.putShort(place + 1, (short) (count + 1)));
      patched.putShort(COUNT_AT, (short) (count + 2));
      out.write(bytes, 0, constantsEnd);
      out.writeByte(UTF8);
      out.writeUTF(substitute);
      out.writeByte(CLASS);
      out.writeShort(count);
      out.write(bytes, constantsEnd, bytes.length - constantsEnd);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    bytes = result.toByteArray();
  }

  private List<Integer> calls(String owner, String method) {
    List<Integer> calls = new ArrayList<>();
    for (int place : constants) {
      if (place > 0
          && bytes[place] == METHOD
          && nameAt(place + 1).equals(owner)
          && nameAt(place + 3).equals(method)) {
        calls.add(place);
      }
    }
    return calls;
  }

  /** The name of the class, or of the name-and-type, that a method constant points to. */
  private String nameAt(int pointer) {
    return text(unsigned(constants.get(unsigned(pointer)) + 1));
  }
}
