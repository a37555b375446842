package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Array;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/** Whoever writes into an array got from cells or a fit writes into a copy. */
class NoWritableArrayTest {

  private static final int[] GRAFTS = {9, 8, 7, 9, 6, 9, 8, 9, 7, 9};
  private static final int[] TAKES = {3, 6, 5, 4, 5, 2, 7, 4, 6, 3};
  private static final int[] CODES = {0, 1, 2, 3, 4, 0, 1, 2, 3, 4};
  private static final double[] DAYS = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};

  private static Cells cells() {
    Provenance nowhere = new Provenance(List.of(), 0, 0);
    Factor hands = new Factor("grafter", List.of("a", "b", "c", "d", "e"), CODES);
    return new Cells(
        List.of(hands), List.of(new Measure("storage_days", DAYS)), GRAFTS, TAKES, 0, nowhere);
  }

  private static List<Object> all() {
    Cells cells = cells();
    TakeFit fit = TakeModel.ofTakes().adjustFor("storage_days").varyBy("grafter").fit(cells);
    return List.of(
        cells,
        cells.factor("grafter"),
        cells.measure("storage_days"),
        fit,
        fit.cells(),
        fit.varying("grafter"),
        fit.design(),
        fit.draws(3, 1),
        fit.predict(PlannedLot.any()));
  }

  @Test
  void what_is_written_into_a_given_array_is_not_seen_again() throws ReflectiveOperationException {
    List<String> seen = new ArrayList<>();
    int arrays = 0;
    for (Object one : all()) {
      for (Method method : one.getClass().getMethods()) {
        if (method.getReturnType().isArray() && !Modifier.isStatic(method.getModifiers())) {
          Object[] arguments = arguments(method);
          Object given = method.invoke(one, arguments);
          spoil(given);
          arrays++;
          if (isSpoilt(method.invoke(one, arguments))) {
            seen.add(one.getClass().getSimpleName() + "." + method.getName());
          }
        }
      }
    }
    assertThat(seen).isEmpty();
    assertThat(arrays).isGreaterThanOrEqualTo(16);
  }

  @Test
  void what_is_written_into_an_array_after_giving_it_is_not_seen() {
    int[] grafts = GRAFTS.clone();
    int[] codes = CODES.clone();
    double[] days = DAYS.clone();
    Factor hands = new Factor("grafter", List.of("a", "b", "c", "d", "e"), codes);
    Measure storage = new Measure("storage_days", days);
    Cells cells =
        new Cells(
            List.of(hands),
            List.of(storage),
            grafts,
            TAKES.clone(),
            0,
            new Provenance(List.of(), 0, 0));
    grafts[0] = 5;
    codes[0] = 4;
    days[0] = 77;
    assertThat(cells.grafts(0)).isEqualTo(9);
    assertThat(cells.factor("grafter").code(0)).isZero();
    assertThat(cells.measure("storage_days").value(0)).isEqualTo(1);
  }

  /** The first value of each type that a method of these accepts. */
  private static Object[] arguments(Method method) {
    Class<?>[] types = method.getParameterTypes();
    Object[] arguments = new Object[types.length];
    boolean fixed = method.getName().startsWith("fixed");
    String second = fixed ? "3" : "a"; // a day of storage, or a level of the hands
    for (int i = 0; i < types.length; i++) {
      if (types[i] == String.class) {
        arguments[i] = i > 0 ? second : fixed ? "storage_days" : "grafter";
      } else if (types[i] == double[].class) {
        arguments[i] = new double[2];
      } else if (types[i] == double[][].class) {
        arguments[i] = new double[1][5];
      } else if (types[i] == double.class) {
        arguments[i] = 3.0;
      } else {
        arguments[i] = 1;
      }
    }
    return arguments;
  }

  private static void spoil(Object array) {
    for (int i = 0; i < Array.getLength(array); i++) {
      Object value = Array.get(array, i);
      if (value.getClass().isArray()) {
        spoil(value);
      } else if (value instanceof Double) {
        Array.set(array, i, -777.25);
      } else if (value instanceof Long) {
        Array.set(array, i, -777L);
      } else {
        Array.set(array, i, -777);
      }
    }
  }

  private static boolean isSpoilt(Object array) {
    for (int i = 0; i < Array.getLength(array); i++) {
      Object value = Array.get(array, i);
      boolean spoilt =
          value.getClass().isArray() ? isSpoilt(value) : ((Number) value).intValue() == -777;
      if (spoilt) {
        return true;
      }
    }
    return false;
  }
}
