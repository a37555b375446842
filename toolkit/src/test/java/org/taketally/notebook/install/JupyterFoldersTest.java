package org.taketally.notebook.install;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reference: Jupyter's common directories, docs.jupyter.org. */
class JupyterFoldersTest {

  @TempDir private Path home;

  private JupyterFolders folders(Map<String, String> environment, String system) {
    return new JupyterFolders(environment, home, system);
  }

  @Test
  void the_users_folder_depends_on_the_system() {
    assertThat(folders(Map.of(), "Linux").user()).isEqualTo(home.resolve(".local/share/jupyter"));
    assertThat(folders(Map.of("XDG_DATA_HOME", "/data"), "Linux").user())
        .isEqualTo(Path.of("/data/jupyter"));
    assertThat(folders(Map.of(), "Mac OS X").user()).isEqualTo(home.resolve("Library/Jupyter"));
    assertThat(folders(Map.of("APPDATA", "/app"), "Windows 11").user())
        .isEqualTo(Path.of("/app/jupyter"));
    assertThat(folders(Map.of("JUPYTER_DATA_DIR", "/mine"), "Linux").user())
        .isEqualTo(Path.of("/mine"));
    assertThat(JupyterFolders.below(Path.of("/opt/env")))
        .isEqualTo(Path.of("/opt/env/share/jupyter"));
  }

  @Test
  void a_home_named_by_the_environment_is_the_one_jupyter_takes() {
    assertThat(folders(Map.of("HOME", "/elsewhere"), "Linux").user())
        .isEqualTo(Path.of("/elsewhere/.local/share/jupyter"));
    assertThat(folders(Map.of("HOME", "/elsewhere"), "Mac OS X").user())
        .isEqualTo(Path.of("/elsewhere/Library/Jupyter"));
    assertThat(folders(Map.of("HOME", ""), "Linux").user())
        .isEqualTo(home.resolve(".local/share/jupyter"));
  }

  private Path kernel(String name, String spec) throws IOException {
    Path folder = Files.createDirectories(home.resolve("data/kernels/" + name));
    Files.writeString(folder.resolve("kernel.json"), spec);
    return folder;
  }

  @Test
  void lists_kernels_and_says_what_is_wrong_with_them() throws Exception {
    Path good = kernel("good", "{\"display_name\": \"Good\", \"argv\": [\"java\"]}");
    Path gone = kernel("taketally", "{\"display_name\": \"Ours\", \"argv\": [\"/no/such/java\"]}");
    Path broken = kernel("broken", "{\"argv\": ");
    Path noJar = home.resolve("other/kernels/taketally");
    Files.createDirectories(noJar);
    Files.writeString(
        noJar.resolve("kernel.json"), "{\"display_name\": \"Ours\", \"argv\": [\"java\"]}");
    JupyterFolders folders =
        folders(
            Map.of(
                "JUPYTER_PATH",
                home.resolve("data") + ":" + home.resolve("other"),
                "JUPYTER_DATA_DIR",
                home.resolve("none").toString()),
            "Linux");
    List<String> sentences =
        InstalledKernel.all(folders).stream()
            .filter(kernel -> kernel.folder().startsWith(home))
            .map(InstalledKernel::sentence)
            .toList();
    assertThat(sentences)
        .containsExactly(
            "broken (broken) in " + broken + ": kernel.json can't be read",
            "good (Good) in " + good,
            "taketally (Ours) in " + gone + ": /no/such/java is gone; install the kernel again",
            "taketally (Ours) in " + noJar + ": its jar is gone; install the kernel again");
  }

  @Test
  void the_mark_is_drawn_in_three_forms() throws Exception {
    Logo.write(home);
    assertThat(Files.readString(home.resolve("logo-svg.svg"))).contains("<title>Taketally</title>");
    var picture = javax.imageio.ImageIO.read(home.resolve("logo-64x64.png").toFile());
    assertThat(picture.getWidth()).isEqualTo(64);
    assertThat(new java.awt.Color(picture.getRGB(32, 60)))
        .isEqualTo(java.awt.Color.decode("#7a5636"));
    assertThat(javax.imageio.ImageIO.read(home.resolve("logo-32x32.png").toFile()).getHeight())
        .isEqualTo(32);
  }
}
