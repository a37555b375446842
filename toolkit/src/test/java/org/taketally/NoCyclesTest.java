package org.taketally;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Inside a room, too, everything depends one way: no cycle between its packages, and none between
 * the classes of a package. Rooms that keep this are listed; add yours when it does.
 */
class NoCyclesTest {

  private static final String BASE = "org.taketally.";
  private static final List<String> ROOMS = List.of("terms", "records");
  private static final JavaClasses TOOLKIT =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.taketally");

  static List<String> rooms() {
    return ROOMS;
  }

  static Stream<String> packages() {
    return TOOLKIT.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> ROOMS.stream().anyMatch(room -> isIn(name, BASE + room)))
        .distinct()
        .sorted();
  }

  private static boolean isIn(String name, String room) {
    return name.equals(room) || name.startsWith(room + ".");
  }

  @ParameterizedTest
  @MethodSource("rooms")
  void no_cycle_between_the_packages_of_a_room(String room) {
    JavaClasses classes =
        TOOLKIT.that(describe("in " + room, type -> isIn(type.getPackageName(), BASE + room)));
    free(classes, "packages of " + room, JavaClass::getPackageName);
  }

  @ParameterizedTest
  @MethodSource("packages")
  void no_cycle_between_the_classes_of_a_package(String name) {
    JavaClasses classes =
        TOOLKIT.that(describe("in " + name, type -> type.getPackageName().equals(name)));
    free(classes, "classes of " + name, NoCyclesTest::topLevel);
  }

  private static String topLevel(JavaClass type) {
    return type.getEnclosingClass().map(NoCyclesTest::topLevel).orElse(type.getName());
  }

  private static void free(JavaClasses classes, String what, Function<JavaClass, String> slice) {
    slices()
        .assignedFrom(
            new SliceAssignment() {
              @Override
              public SliceIdentifier getIdentifierOf(JavaClass type) {
                return SliceIdentifier.of(slice.apply(type));
              }

              @Override
              public String getDescription() {
                return what;
              }
            })
        .should()
        .beFreeOfCycles()
        .check(classes);
  }
}
