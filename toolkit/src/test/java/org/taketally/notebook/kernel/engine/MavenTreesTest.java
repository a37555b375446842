package org.taketally.notebook.kernel.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Libraries with deep trees come with what Maven gives for them; needs Maven Central, or a computer
 * that has them already.
 */
@Tag("slow")
class MavenTreesTest {

  /** Reference: Maven 3.9.9, {@code dependency:build-classpath -DincludeScope=runtime}, jars. */
  @ParameterizedTest
  @CsvSource({
    "com.github.haifengl:smile-core:3.1.1, 19, openblas-0.3.26-1.5.10.jar",
    "tech.tablesaw:tablesaw-core:0.44.4, 15, icu4j-74.2.jar",
    "org.springframework.boot:spring-boot-starter-web:3.2.5, 34, jackson-databind-2.15.4.jar",
  })
  void as_many_jars_as_maven_gives(String library, int jars, String deep) throws Exception {
    List<String> names =
        MavenLibraries.usual().jars(List.of(library)).stream()
            .map(Path::getFileName)
            .map(Path::toString)
            .toList();
    assertThat(names).hasSize(jars).doesNotHaveDuplicates().contains(deep);
  }
}
