package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Numbers put in order by lot. */
final class RandomOrder {

  private RandomOrder() {}

  static int[] of(int[] numbers, Random random) {
    List<Integer> order = new ArrayList<>(Arrays.stream(numbers).boxed().toList());
    Collections.shuffle(order, random);
    return order.stream().mapToInt(Integer::intValue).toArray();
  }
}
