package org.taketally;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Data flows one way: each package imports only what lies upstream of it. No exceptions. */
class LayerTest {

  private static final String BASE = "org.taketally.";

  /** The rooms, in the order of the flow. */
  static final List<String> FLOW =
      List.of(
          "files",
          "terms",
          "records",
          "cells",
          "model",
          "answers",
          "plan",
          "watch",
          "analysis",
          "wording",
          "figure",
          "publish",
          "notebook",
          "app");

  private static final JavaClasses TOOLKIT = ToolkitClasses.all();

  static IntStream everyPackage() {
    return IntStream.range(0, FLOW.size());
  }

  @ParameterizedTest
  @MethodSource("everyPackage")
  void uses_only_what_lies_upstream(int place) {
    String[] downstream =
        FLOW.subList(place + 1, FLOW.size()).stream()
            .map(name -> BASE + name + "..")
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAPackage(BASE + FLOW.get(place) + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(downstream)
        .allowEmptyShould(true)
        .check(TOOLKIT);
  }

  @ParameterizedTest
  @MethodSource("everyPackage")
  void every_room_is_there(int place) {
    org.assertj.core.api.Assertions.assertThat(TOOLKIT)
        .anyMatch(type -> type.getPackageName().startsWith(BASE + FLOW.get(place)));
  }

  /** The model is pure: no tables, files, printing or pictures. */
  @org.junit.jupiter.api.Test
  void model_knows_no_tables_files_or_printing() {
    noClasses()
        .that()
        .resideInAPackage(BASE + "model..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("tech.tablesaw..", "java.io..", "java.nio.file..", "java.awt..")
        .orShould()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .allowEmptyShould(true)
        .check(TOOLKIT);
  }

  /** The kernel imports nothing of ours, so that it serves any Java work. */
  @org.junit.jupiter.api.Test
  void kernel_imports_nothing_of_ours() {
    noClasses()
        .that()
        .resideInAPackage(BASE + "notebook.kernel..")
        .should()
        .dependOnClassesThat(
            com.tngtech.archunit.base.DescribedPredicate.describe(
                "ours, outside the kernel",
                type ->
                    type.getPackageName().startsWith("org.taketally")
                        && !type.getPackageName().startsWith(BASE + "notebook.kernel")))
        .allowEmptyShould(true)
        .check(TOOLKIT);
  }

  /** Inside the model: numeric, laplace, the model, what compares fits; nobody else reaches in. */
  @org.junit.jupiter.api.Test
  void mathematics_and_likelihood_serve_the_model_only() {
    noClasses()
        .that()
        .resideInAPackage(BASE + "model.numeric..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            BASE + "model", BASE + "model.laplace..", BASE + "model.compare..", BASE + "cells..")
        .check(TOOLKIT);
    noClasses()
        .that()
        .resideInAPackage(BASE + "model.laplace..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(BASE + "model", BASE + "model.compare..", BASE + "cells..")
        .check(TOOLKIT);
    noClasses()
        .that()
        .resideInAPackage(BASE + "model")
        .should()
        .dependOnClassesThat()
        .resideInAPackage(BASE + "model.compare..")
        .check(TOOLKIT);
    noClasses()
        .that()
        .resideInAPackage(BASE + "model.compare..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage(BASE + "model.laplace..")
        .check(TOOLKIT);
    noClasses()
        .that()
        .resideOutsideOfPackage(BASE + "model..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(BASE + "model.numeric..", BASE + "model.laplace..")
        .check(TOOLKIT);
  }
}
