package org.taketally.notebook.kernel.engine;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.maven.repository.internal.MavenRepositorySystemUtils;
import org.eclipse.aether.DefaultRepositorySystemSession;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.collection.CollectRequest;
import org.eclipse.aether.graph.Dependency;
import org.eclipse.aether.repository.LocalRepository;
import org.eclipse.aether.repository.RemoteRepository;
import org.eclipse.aether.resolution.ArtifactResult;
import org.eclipse.aether.resolution.DependencyRequest;
import org.eclipse.aether.resolution.DependencyResolutionException;
import org.eclipse.aether.supplier.RepositorySystemSupplier;
import org.eclipse.aether.util.artifact.JavaScopes;
import org.eclipse.aether.util.filter.DependencyFilterUtils;
import org.eclipse.aether.util.repository.JreProxySelector;

/**
 * Libraries by Maven coordinates, with what they need to run. What was fetched once is kept where
 * Maven keeps it ({@code ~/.m2/repository}) and found there again without a network. A proxy is
 * taken from Java's own settings ({@code https.proxyHost}).
 */
final class MavenLibraries {

  private static final String CENTRAL = "https://repo.maven.apache.org/maven2/";

  private final RemoteRepository place;
  private final Path kept;

  private MavenLibraries(String address, Path kept) {
    this.place = new RemoteRepository.Builder("place", "default", address).build();
    this.kept = kept;
  }

  static MavenLibraries usual() {
    return new MavenLibraries(CENTRAL, keptByMaven());
  }

  /**
   * From another place.
   *
   * @param place a folder laid out as a Maven repository, or an address
   */
  static MavenLibraries from(String place) throws CommandRefused {
    if (place.matches("https?://.+")) {
      return new MavenLibraries(place, keptByMaven());
    }
    Path folder = Path.of(place);
    if (!Files.isDirectory(folder)) {
      throw new CommandRefused(
          "%maven: found no folder "
              + folder.toAbsolutePath()
              + ", expected a folder laid out as a Maven repository, or an address");
    }
    URI address = folder.toAbsolutePath().normalize().toUri();
    return new MavenLibraries(address.toString(), keptByMaven());
  }

  private static Path keptByMaven() {
    String said = System.getProperty("maven.repo.local");
    return said == null
        ? Path.of(System.getProperty("user.home"), ".m2", "repository")
        : Path.of(said);
  }

  /**
   * The jars of some libraries and of all they need to run.
   *
   * @param coordinates {@code group:artifact:version}, or with extension and classifier between
   * @return jars, each once
   */
  List<Path> jars(List<String> coordinates) throws CommandRefused {
    RepositorySystem system = new RepositorySystemSupplier().get();
    DefaultRepositorySystemSession workspace = MavenRepositorySystemUtils.newSession();
    workspace.setLocalRepositoryManager(
        system.newLocalRepositoryManager(workspace, new LocalRepository(kept.toFile())));
    workspace.setProxySelector(new JreProxySelector());
    CollectRequest wanted = new CollectRequest();
    wanted.addRepository(place);
    for (String each : coordinates) {
      wanted.addDependency(new Dependency(artifact(each), JavaScopes.RUNTIME));
    }
    DependencyRequest request =
        new DependencyRequest(wanted, DependencyFilterUtils.classpathFilter(JavaScopes.RUNTIME));
    List<Path> jars = new ArrayList<>();
    try {
      for (ArtifactResult result :
          system.resolveDependencies(workspace, request).getArtifactResults()) {
        jars.add(result.getArtifact().getFile().toPath());
      }
    } catch (DependencyResolutionException notFound) {
      throw new CommandRefused("%maven: " + notFound.getMessage());
    } finally {
      system.shutdown();
    }
    return jars;
  }

  private static DefaultArtifact artifact(String coordinates) throws CommandRefused {
    try {
      return new DefaultArtifact(coordinates);
    } catch (IllegalArgumentException wrong) {
      throw new CommandRefused(
          "%maven: found \"" + coordinates + "\", expected group:artifact:version");
    }
  }
}
