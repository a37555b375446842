package org.taketally.notebook.kernel.engine;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.apache.maven.repository.internal.MavenRepositorySystemUtils;
import org.eclipse.aether.DefaultRepositorySystemSession;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.collection.CollectRequest;
import org.eclipse.aether.graph.Dependency;
import org.eclipse.aether.graph.Exclusion;
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

  private MavenLibraries(String id, String address, Path kept) {
    this.place = new RemoteRepository.Builder(id, "default", address).build();
    this.kept = kept;
  }

  static MavenLibraries usual() {
    return new MavenLibraries("central", CENTRAL, keptByMaven()); // as Maven calls it: shared
  }

  /**
   * From another place.
   *
   * @param place a folder laid out as a Maven repository, or an address
   */
  static MavenLibraries from(String place) throws CommandRefused {
    if (place.matches("https?://.+")) {
      return new MavenLibraries("place", place, keptByMaven());
    }
    Path folder = Path.of(place);
    if (!Files.isDirectory(folder)) {
      throw new CommandRefused(
          "%maven: found no folder "
              + folder.toAbsolutePath()
              + ", expected a folder laid out as a Maven repository, or an address");
    }
    URI address = folder.toAbsolutePath().normalize().toUri();
    return new MavenLibraries("place", address.toString(), keptByMaven());
  }

  private static Path keptByMaven() {
    return keptByMaven(System.getProperties(), System.getenv());
  }

  /** Where Maven keeps libraries: where it is told to, else below the home that is in force. */
  static Path keptByMaven(Properties system, Map<String, String> environment) {
    String said = system.getProperty("maven.repo.local");
    if (said != null) {
      return Path.of(said);
    }
    String home = environment.getOrDefault("HOME", "");
    String kept = home.isBlank() ? system.getProperty("user.home") : home;
    return Path.of(kept, ".m2", "repository");
  }

  /**
   * The jars of some libraries and of all they need to run.
   *
   * @param words {@code group:artifact:version}, or with extension and classifier before the
   *     version; {@code -group:artifact} leaves that out wherever it is needed
   * @return jars, each once
   */
  List<Path> jars(List<String> words) throws CommandRefused {
    RepositorySystem system = new RepositorySystemSupplier().get();
    try {
      return system
          .resolveDependencies(session(system), request(words))
          .getArtifactResults()
          .stream()
          .map(ArtifactResult::getArtifact)
          .filter(artifact -> artifact.getExtension().equals("jar"))
          .map(artifact -> artifact.getFile().toPath())
          .toList();
    } catch (DependencyResolutionException notFound) {
      throw new CommandRefused("%maven: " + notFound.getMessage());
    } finally {
      system.shutdown();
    }
  }

  /** As Maven's own: descriptions of libraries may ask for the system, its Java and environment. */
  private DefaultRepositorySystemSession session(RepositorySystem system) {
    DefaultRepositorySystemSession session = MavenRepositorySystemUtils.newSession();
    Map<String, String> properties = new HashMap<>();
    System.getenv().forEach((name, value) -> properties.put("env." + name, value));
    Properties own = System.getProperties();
    own.stringPropertyNames().forEach(name -> properties.put(name, own.getProperty(name)));
    session.setSystemProperties(properties);
    session.setLocalRepositoryManager(
        system.newLocalRepositoryManager(session, new LocalRepository(kept.toFile())));
    session.setProxySelector(new JreProxySelector());
    return session;
  }

  private DependencyRequest request(List<String> words) throws CommandRefused {
    List<Exclusion> left = new ArrayList<>();
    for (String word : words) {
      if (word.startsWith("-")) {
        left.add(exclusion(word));
      }
    }
    CollectRequest wanted = new CollectRequest();
    wanted.addRepository(place);
    for (String word : words) {
      if (!word.startsWith("-")) {
        wanted.addDependency(new Dependency(artifact(word), JavaScopes.RUNTIME, false, left));
      }
    }
    if (wanted.getDependencies().isEmpty()) {
      throw new CommandRefused("%maven: expected at least one group:artifact:version");
    }
    return new DependencyRequest(wanted, DependencyFilterUtils.classpathFilter(JavaScopes.RUNTIME));
  }

  private static Exclusion exclusion(String word) throws CommandRefused {
    String[] names = word.substring(1).split(":", -1);
    if (names.length != 2 || names[0].isBlank() || names[1].isBlank()) {
      throw new CommandRefused("%maven: found \"" + word + "\", expected -group:artifact");
    }
    return new Exclusion(names[0], names[1], "*", "*");
  }

  private static DefaultArtifact artifact(String coordinates) throws CommandRefused {
    DefaultArtifact artifact;
    try {
      artifact = new DefaultArtifact(coordinates);
    } catch (IllegalArgumentException wrong) {
      throw new CommandRefused(
          "%maven: found \"" + coordinates + "\", expected group:artifact:version");
    }
    if (artifact.getVersion().matches("[\\[(].*|LATEST|RELEASE")) {
      throw new CommandRefused(
          "%%maven: found version \"%s\", expected one version: what a range gives today it may not give tomorrow"
              .formatted(artifact.getVersion()));
    }
    return artifact;
  }
}
