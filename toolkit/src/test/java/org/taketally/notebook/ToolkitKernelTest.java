package org.taketally.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.taketally.ToolkitClasses;

/** What a cell can name without importing it. */
class ToolkitKernelTest {

  private static final List<String> IMPORTS = ToolkitKernel.setup().engine().imports();

  private static boolean isImportedWhole(String packageName) {
    return IMPORTS.contains(packageName + ".*");
  }

  private static boolean isInJava(String simpleName) {
    return IMPORTS.stream()
        .filter(name -> name.startsWith("java.") && name.endsWith(".*"))
        .anyMatch(name -> exists(name.replace("*", simpleName)));
  }

  private static boolean exists(String className) {
    try {
      Class.forName(className);
      return true;
    } catch (ClassNotFoundException no) {
      return false;
    }
  }

  @Test
  void every_package_that_is_imported_has_classes() {
    Set<String> packages =
        ToolkitClasses.all().stream()
            .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC))
            .map(type -> type.getPackageName() + ".*")
            .collect(Collectors.toSet());
    assertThat(IMPORTS.stream().filter(name -> name.matches("org\\.taketally\\..*\\*")))
        .isNotEmpty()
        .allMatch(packages::contains);
  }

  @Test
  void no_class_of_the_toolkit_is_ambiguous() {
    Map<String, List<String>> owners = new TreeMap<>();
    for (JavaClass type : ToolkitClasses.all()) {
      if (type.isTopLevelClass()
          && type.getModifiers().contains(JavaModifier.PUBLIC)
          && isImportedWhole(type.getPackageName())) {
        owners.computeIfAbsent(type.getSimpleName(), name -> new ArrayList<>()).add(type.getName());
      }
    }
    assertThat(owners).containsKeys("GraftRecords", "TakeModel", "RootstockVerdict", "Figures");
    owners.forEach(
        (name, full) -> {
          boolean single = full.stream().anyMatch(IMPORTS::contains);
          assertThat(single || (full.size() == 1 && !isInJava(name)))
              .as("%s is ambiguous in a cell: %s; import one of them by name", name, full)
              .isTrue();
        });
  }
}
