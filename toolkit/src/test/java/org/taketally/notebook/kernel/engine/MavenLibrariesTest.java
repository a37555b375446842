package org.taketally.notebook.kernel.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;

/** Libraries are kept where Maven keeps them. */
class MavenLibrariesTest {

  private static Path kept(String told, Map<String, String> environment) {
    Properties system = new Properties();
    system.setProperty("user.home", "/home/of/java");
    if (told != null) {
      system.setProperty("maven.repo.local", told);
    }
    return MavenLibraries.keptByMaven(system, environment);
  }

  @Test
  void below_the_home_in_force_unless_told_otherwise() {
    assertThat(kept(null, Map.of("HOME", "/home/in/force")))
        .isEqualTo(Path.of("/home/in/force/.m2/repository"));
    assertThat(kept(null, Map.of("HOME", " "))).isEqualTo(Path.of("/home/of/java/.m2/repository"));
    assertThat(kept(null, Map.of())).isEqualTo(Path.of("/home/of/java/.m2/repository"));
    assertThat(kept("/elsewhere", Map.of("HOME", "/home/in/force")))
        .isEqualTo(Path.of("/elsewhere"));
  }
}
