package org.taketally.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.tools.ToolProvider;
import org.apache.maven.repository.internal.MavenRepositorySystemUtils;
import org.eclipse.aether.DefaultRepositorySystemSession;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.artifact.Artifact;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.collection.CollectRequest;
import org.eclipse.aether.graph.Dependency;
import org.eclipse.aether.repository.LocalRepository;
import org.eclipse.aether.repository.RemoteRepository;
import org.eclipse.aether.repository.WorkspaceReader;
import org.eclipse.aether.repository.WorkspaceRepository;
import org.eclipse.aether.resolution.ArtifactResult;
import org.eclipse.aether.resolution.DependencyRequest;
import org.eclipse.aether.supplier.RepositorySystemSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program with the library as its only dependency gets what it needs, and nothing beside. */
class LibraryAloneIT {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  private static final Path LIBRARY = Path.of(System.getProperty("taketally.library"));
  private static final long MEGABYTE = 1_000_000;

  @TempDir private Path folder;

  /** This build in place of a repository it is published in. */
  private static final class ThisBuild implements WorkspaceReader {

    private final WorkspaceRepository here = new WorkspaceRepository("this build");

    @Override
    public WorkspaceRepository getRepository() {
      return here;
    }

    @Override
    public File findArtifact(Artifact artifact) {
      if (!artifact.getGroupId().equals("org.taketally")) {
        return null;
      }
      boolean parent = artifact.getArtifactId().equals("taketally");
      if (artifact.getExtension().equals("pom")) {
        return ROOT.resolve(parent ? "pom.xml" : "toolkit/pom.xml").toFile();
      }
      return LIBRARY.toFile();
    }

    @Override
    public List<String> findVersions(Artifact artifact) {
      return List.of();
    }
  }

  /** What Maven gives a program that depends on the library; from the local repository only. */
  private static List<Path> classpath() throws Exception {
    RepositorySystem system = new RepositorySystemSupplier().get();
    DefaultRepositorySystemSession session = MavenRepositorySystemUtils.newSession();
    session.setOffline(true);
    session.setSystemProperties(System.getProperties());
    session.setWorkspaceReader(new ThisBuild());
    session.setLocalRepositoryManager(
        system.newLocalRepositoryManager(
            session, new LocalRepository(System.getProperty("taketally.repository"))));
    RemoteRepository central =
        new RemoteRepository.Builder("central", "default", "https://repo.maven.apache.org/maven2")
            .build();
    CollectRequest wanted =
        new CollectRequest(
            List.of(new Dependency(new DefaultArtifact("org.taketally:toolkit:0.1.0"), "compile")),
            List.of(),
            List.of(central));
    List<Path> jars = new ArrayList<>();
    for (ArtifactResult found :
        system
            .resolveDependencies(session, new DependencyRequest(wanted, null))
            .getArtifactResults()) {
      jars.add(found.getArtifact().getFile().toPath());
    }
    return jars;
  }

  @Test
  void neither_kernel_nor_resolver_nor_command_line_nor_logging_comes_with_it() throws Exception {
    List<String> names = classpath().stream().map(jar -> jar.getFileName().toString()).toList();
    assertThat(names)
        .contains("tablesaw-core-0.44.4.jar", LIBRARY.getFileName().toString())
        .noneMatch(
            name ->
                name.matches(
                    "(jjava|jeromq|jnacl|maven|plexus|http|picocli|jcl-over|slf4j-nop|junit|duckdb).*"));
  }

  @Test
  void what_comes_beside_tablesaw_smile_and_commons_is_under_fifteen_megabytes() throws Exception {
    long size = 0;
    for (Path jar : classpath()) {
      String name = jar.getFileName().toString();
      if (!name.matches("(tablesaw|fastutil|smile|commons)-.*")) {
        size += Files.size(jar);
      }
    }
    assertThat(size).isBetween(MEGABYTE, 15 * MEGABYTE);
    System.out.printf(
        "the library and what comes with it beside Tablesaw, Smile and Commons: %.1f MB%n",
        size / (double) MEGABYTE);
  }

  @Test
  void a_program_compiles_and_runs_with_it_alone() throws Exception {
    String classpath =
        classpath().stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    Path source = Path.of("src/test/java/org/taketally/build/LibraryUser.java");
    int compiled =
        ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                null,
                null,
                "-d",
                folder.toString(),
                "-cp",
                classpath,
                ROOT.resolve("toolkit").resolve(source).toString());
    assertThat(compiled).isZero();
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-cp",
                folder + File.pathSeparator + classpath,
                "org.taketally.build.LibraryUser",
                ROOT.resolve("datasets/halden-bay-walnut/grafts-2023.csv").toString())
            .redirectErrorStream(true)
            .start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(printed).isZero();
    assertThat(printed).contains("rootstock: true").containsPattern("grafts: [1-9]");
  }
}
