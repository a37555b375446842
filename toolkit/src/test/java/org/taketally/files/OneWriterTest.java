package org.taketally.files;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import java.io.FileOutputStream;
import java.io.FileWriter;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.taketally.ToolkitClasses;

/** All files are written in this one room. */
class OneWriterTest {

  private static final JavaClasses TOOLKIT = ToolkitClasses.all();

  @Test
  void no_other_room_writes_files() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.taketally.files")
        .should()
        .callMethodWhere(describe("write to the disk", OneWriterTest::writes))
        .orShould()
        .dependOnClassesThat()
        .belongToAnyOf(FileOutputStream.class, FileWriter.class, RandomAccessFile.class)
        .check(TOOLKIT);
  }

  private static boolean writes(JavaMethodCall call) {
    String name = call.getTarget().getName();
    boolean copies = name.equals("copy") && !toStream(call);
    return call.getTargetOwner().isEquivalentTo(Files.class)
        && (copies || name.matches("write.*|move|newBufferedWriter|newOutputStream"));
  }

  private static boolean toStream(JavaMethodCall call) {
    return call.getTarget().getRawParameterTypes().stream()
        .anyMatch(type -> type.isEquivalentTo(OutputStream.class));
  }

  @Test
  void no_other_room_writes_comma_separated_values_but_the_invented_sheets() {
    noClasses()
        .that()
        .resideOutsideOfPackages("org.taketally.files", "org.taketally.records.invented")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("de.siegmar.fastcsv.writer")
        .check(TOOLKIT);
  }
}
