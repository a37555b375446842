package org.taketally.model.numeric;

import java.util.Arrays;

/** Numbers distinct keys 0, 1, 2, ... in order of first sight; open addressing. */
public final class Numbering {

  private long[] keys = new long[1 << 10];
  private int[] numbers = new int[1 << 10];
  private int count;

  public Numbering() {
    Arrays.fill(numbers, -1);
  }

  public int count() {
    return count;
  }

  public int number(long key) {
    int at = find(key);
    if (numbers[at] < 0) {
      if (2 * (count + 1) > keys.length) {
        grow();
        at = find(key);
      }
      keys[at] = key;
      numbers[at] = count++;
    }
    return numbers[at];
  }

  private int find(long key) {
    long mixed = key * 0x9E3779B97F4A7C15L;
    int at = (int) (mixed >>> 32) & keys.length - 1;
    while (numbers[at] >= 0 && keys[at] != key) {
      at = at + 1 & keys.length - 1;
    }
    return at;
  }

  private void grow() {
    long[] oldKeys = keys;
    int[] oldNumbers = numbers;
    keys = new long[2 * oldKeys.length];
    numbers = new int[keys.length];
    Arrays.fill(numbers, -1);
    for (int i = 0; i < oldKeys.length; i++) {
      if (oldNumbers[i] >= 0) {
        int at = find(oldKeys[i]);
        keys[at] = oldKeys[i];
        numbers[at] = oldNumbers[i];
      }
    }
  }
}
