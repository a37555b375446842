package org.taketally;

import com.tngtech.archunit.core.domain.JavaClass.Predicates;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** The toolkit's own classes as rules look at them: read once, as that takes seconds. */
public final class ToolkitClasses {

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.taketally");

  private ToolkitClasses() {}

  /** Without tests. */
  public static JavaClasses all() {
    return ALL;
  }

  /** Those of a package and the ones below it. */
  public static JavaClasses in(String packageName) {
    return ALL.that(Predicates.resideInAPackage(packageName + ".."));
  }
}
