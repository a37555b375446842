package org.taketally.notebook.install;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.tools.ToolProvider;
import org.taketally.files.SafeFile;
import org.taketally.files.ThisJava;
import org.taketally.notebook.KernelMain;

/**
 * Installs the kernel for Jupyter: a folder with {@code kernel.json}, the mark, a copy of the
 * program, and an archive of its classes for a fast start.
 */
public final class KernelInstall {

  /** Name of the kernel's folder, by which Jupyter calls it. */
  public static final String NAME = "taketally";

  private static final String JAR = "taketally.jar";
  private static final String ARCHIVE = "classes.jsa";

  private final Path folder;
  private final List<String> javaOptions;

  /**
   * An installation to be.
   *
   * @param jupyterData Jupyter's data folder, see {@link JupyterFolders}
   * @param javaOptions more options for Java, e.g. {@code -Xmx4g}
   */
  public KernelInstall(Path jupyterData, List<String> javaOptions) {
    folder = jupyterData.resolve("kernels").resolve(NAME).toAbsolutePath().normalize();
    this.javaOptions = List.copyOf(javaOptions);
  }

  /**
   * What was installed.
   *
   * @param folder the kernel's folder
   * @param slowStart why the kernel will start slowly, empty if it won't
   */
  public record Installed(Path folder, Optional<String> slowStart) {}

  /**
   * Installs the packaged program that this code belongs to.
   *
   * @return what was installed
   * @throws IOException if a file can't be written, or there is no JDK or no packaged program
   * @throws InterruptedException if told not to go on
   */
  public Installed run() throws IOException, InterruptedException {
    return run(ownJar());
  }

  Installed run(Path program) throws IOException, InterruptedException {
    if (ToolProvider.getSystemJavaCompiler() == null) {
      throw new IOException(
          "this Java, %s, has no compiler; install a JDK (Debian: openjdk-17-jdk-headless) and run this command with it"
              .formatted(System.getProperty("java.home")));
    }
    Files.createDirectories(folder);
    Path jar = folder.resolve(JAR);
    if (!program.toRealPath().equals(jar)) {
      SafeFile.write(jar, out -> Files.copy(program, out));
    }
    Logo.write(folder);
    Path archive = folder.resolve(ARCHIVE);
    Files.deleteIfExists(archive);
    Optional<String> problem = ClassArchive.make(ThisJava.program(), options(), jar, archive);
    Gson pretty = new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();
    SafeFile.write(
        folder.resolve("kernel.json"), pretty.toJson(spec(jar, archive, problem.isEmpty())) + "\n");
    return new Installed(folder, problem);
  }

  private static Path ownJar() throws IOException {
    try {
      Path place =
          Path.of(KernelInstall.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      if (Files.isRegularFile(place)) {
        return place;
      }
      throw new IOException(place + " is no jar; run this command from the packaged taketally.jar");
    } catch (URISyntaxException odd) {
      throw new IOException("cannot find the program's own jar", odd);
    }
  }

  private List<String> options() {
    List<String> options = new ArrayList<>(KernelMain.JAVA_OPTIONS);
    options.addAll(javaOptions);
    return options;
  }

  private JsonObject spec(Path jar, Path archive, boolean archived) {
    JsonArray command = new JsonArray();
    command.add(ThisJava.program().toString());
    if (archived) {
      command.add("-XX:SharedArchiveFile=" + archive);
      command.add("-Xlog:disable"); // an archive that no longer fits is left aside without a word
      command.add("-Xlog:all=error:stderr");
    }
    options().forEach(command::add);
    command.add("-cp");
    command.add(jar.toString());
    command.add(KernelMain.class.getName());
    command.add("{connection_file}");
    JsonObject spec = new JsonObject();
    spec.add("argv", command);
    spec.addProperty("display_name", "Taketally (Java)");
    spec.addProperty("language", "java");
    spec.addProperty("interrupt_mode", "message");
    spec.add("env", new JsonObject());
    JsonObject metadata = new JsonObject();
    metadata.addProperty("debugger", false);
    spec.add("metadata", metadata);
    return spec;
  }
}
