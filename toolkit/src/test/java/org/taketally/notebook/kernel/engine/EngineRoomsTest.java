package org.taketally.notebook.kernel.engine;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import org.junit.jupiter.api.Test;
import org.taketally.ToolkitClasses;

/** The rooms of the engine, each using only those before it; no class of a notebook in a circle. */
class EngineRoomsTest {

  private static final JavaClasses NOTEBOOK = ToolkitClasses.in("org.taketally.notebook");

  private static final String ENGINE = "org.taketally.notebook.kernel.engine";

  @Test
  void rooms_use_only_those_before_them() {
    layeredArchitecture()
        .consideringOnlyDependenciesInAnyPackage(ENGINE + "..")
        .layer("engine")
        .definedBy(ENGINE)
        .layer("threads")
        .definedBy(ENGINE + ".threads")
        .layer("output")
        .definedBy(ENGINE + ".output")
        .layer("source")
        .definedBy(ENGINE + ".source")
        .whereLayer("engine")
        .mayNotBeAccessedByAnyLayer()
        .whereLayer("threads")
        .mayOnlyBeAccessedByLayers("engine")
        .whereLayer("output")
        .mayOnlyBeAccessedByLayers("engine", "threads")
        .check(NOTEBOOK);
  }

  /** A class with those inside it is one thing. */
  private static final SliceAssignment CLASSES =
      new SliceAssignment() {
        @Override
        public SliceIdentifier getIdentifierOf(JavaClass type) {
          return SliceIdentifier.of(type.getName().replaceFirst("\\$.*", ""));
        }

        @Override
        public String getDescription() {
          return "every class";
        }
      };

  @Test
  void no_classes_use_each_other_in_a_circle() {
    slices().assignedFrom(CLASSES).should().beFreeOfCycles().check(NOTEBOOK);
  }
}
