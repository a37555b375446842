package org.taketally.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The script {@code toolkit/taketally}: the same as the jar, and faster from its second start. */
class LauncherIT {

  private static final Path SCRIPT =
      Path.of(System.getProperty("taketally.root"), "toolkit", "taketally");
  private static final Path BUILT = Path.of(System.getProperty("taketally.jar"));

  private record Ended(int status, String out, String err) {}

  @TempDir private static Path installed;
  private static Path script;
  private static Path archive;

  @BeforeAll
  static void install() throws Exception {
    assumeTrue(File.separatorChar == '/', "the script is for a POSIX shell");
    script = Files.copy(SCRIPT, installed.resolve("taketally"));
    assertThat(script.toFile().setExecutable(true)).isTrue();
    Files.copy(BUILT, installed.resolve("taketally.jar"));
    archive = installed.resolve("taketally.jsa");
    assertThat(run(script, "--version").status()).isZero();
    assertThat(archive).isNotEmptyFile();
  }

  private static Ended run(Path start, String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of(start.toString()));
    command.addAll(List.of(arguments));
    return run(command);
  }

  private static Ended run(List<String> command) throws Exception {
    return run(command, Map.of());
  }

  private static Ended run(List<String> command, Map<String, String> environment) throws Exception {
    Path out = Files.createTempFile(installed, "out", "");
    Path err = Files.createTempFile(installed, "err", "");
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    builder.environment().putAll(environment);
    Process process = builder.start();
    assertThat(process.waitFor(900, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  private static Ended jar(String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of("-jar", BUILT.toString()));
    command.addAll(List.of(arguments));
    return java(command.toArray(String[]::new));
  }

  private static Ended java(String... arguments) throws Exception {
    return run(Path.of(System.getProperty("java.home"), "bin", "java"), arguments);
  }

  @Test
  void says_and_ends_as_the_jar_does() throws Exception {
    assertThat(run(script, "--help")).isEqualTo(jar("--help"));
    assertThat(run(script, "check", "no such file.csv"))
        .isEqualTo(jar("check", "no such file.csv"))
        .extracting(Ended::status)
        .isNotEqualTo(0);
  }

  @Test
  void later_starts_read_the_archive() throws Exception {
    Ended ended =
        java(
            "-XX:SharedArchiveFile=" + archive,
            "-Xlog:class+load",
            "-jar",
            installed.resolve("taketally.jar").toString(),
            "--version");
    assertThat(ended.out())
        .contains("org.taketally.app.AnalyseCommand source: shared objects file (top)");
  }

  @Test
  void runs_by_way_of_a_link_from_elsewhere() throws Exception {
    Path link = Files.createSymbolicLink(installed.resolve("tt"), Path.of("taketally"));
    assertThat(run(link, "--version")).isEqualTo(jar("--version"));
  }

  @Test
  void an_archive_that_is_older_than_the_jar_or_spoilt_changes_nothing() throws Exception {
    Path other = Files.createDirectory(installed.resolve("other"));
    Path again = Files.copy(SCRIPT, other.resolve("taketally"));
    assertThat(again.toFile().setExecutable(true)).isTrue();
    Files.copy(BUILT, other.resolve("taketally.jar"));
    Path spoilt = other.resolve("taketally.jsa");
    Files.writeString(spoilt, "not an archive", StandardCharsets.UTF_8);
    assertThat(run(again, "--version")).isEqualTo(jar("--version"));
    Files.setLastModifiedTime(spoilt, FileTime.fromMillis(0));
    assertThat(run(again, "--version")).isEqualTo(jar("--version"));
    assertThat(Files.size(spoilt)).isGreaterThan(1_000_000);
  }

  @Test
  void a_collector_the_user_chose_counts() throws Exception {
    Ended ended =
        run(
            List.of(script.toString(), "check", "no such file.csv"),
            Map.of("JAVA_TOOL_OPTIONS", "-XX:+UseParallelGC"));
    Ended usual = run(script, "check", "no such file.csv");
    assertThat(ended.status()).isEqualTo(usual.status());
    assertThat(ended.err()).endsWith(usual.err()).contains("-XX:+UseParallelGC");
  }

  @Test
  void large_files_alone_are_worth_the_second_compiler() throws Exception {
    Path home = Files.createDirectories(installed.resolve("a home"));
    Path java = Files.createDirectory(home.resolve("bin")).resolve("java");
    Files.writeString(java, "#!/bin/sh\nprintf '%s\\n' \"$@\"\n", StandardCharsets.UTF_8);
    assertThat(java.toFile().setExecutable(true)).isTrue();
    Path large = installed.resolve("a hundred thousand.csv");
    try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(13_000_000);
    }
    Map<String, String> heard = Map.of("JAVA_HOME", home.toString());
    String start = script.toString();
    String first = "-XX:TieredStopAtLevel=1\n";
    assertThat(run(List.of(start, "summary", SCRIPT.toString()), heard).out()).contains(first);
    assertThat(run(List.of(start, "--help"), heard).out()).contains(first);
    assertThat(run(List.of(start, "analyse", large.toString()), heard).out())
        .contains("Tier4InvocationThreshold", "-jar", large.toString())
        .doesNotContain(first);
    assertThat(run(List.of(start, "bench", "S"), heard).out()).doesNotContain(first);
  }

  @Test
  @Tag("slow")
  void the_demo_needs_no_more_than_256_MB() throws Exception {
    Path out = installed.resolve("demo");
    Ended ended = java("-Xmx256m", "-jar", BUILT.toString(), "demo", "--out", out.toString());
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(out.resolve("season.html")).isNotEmptyFile();
  }

  @Test
  @Tag("slow")
  void the_benchmark_does_the_whole_job() throws Exception {
    Ended ended = java("-jar", BUILT.toString(), "bench", "S", "--repeat", "1", "--with-r");
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(ended.out())
        .contains("the whole job, from cold: analyse ", "peak memory", "the whole job in R")
        .doesNotContain("analyse failed");
  }

  @Test
  @Tag("slow")
  void ten_million_grafts_need_less_than_4_GB() throws Exception {
    Ended ended =
        java(
            "-Xmx3700m",
            "-XX:+UseSerialGC",
            "-jar",
            BUILT.toString(),
            "bench",
            "XL",
            "--whole-job");
    assertThat(ended.status()).as(ended.err()).isZero();
    Matcher peak = Pattern.compile("peak memory ([0-9,]+) MB").matcher(ended.out());
    assertThat(peak.find()).as(ended.out()).isTrue();
    assertThat(Integer.parseInt(peak.group(1).replace(",", ""))).isBetween(500, 4096);
  }

  @Test
  void says_what_to_do_where_nothing_is_built() throws Exception {
    Path empty = Files.createDirectory(installed.resolve("empty"));
    Path alone = Files.copy(SCRIPT, empty.resolve("taketally"));
    assertThat(alone.toFile().setExecutable(true)).isTrue();
    Ended ended = run(alone, "--version");
    assertThat(ended.status()).isEqualTo(2);
    assertThat(ended.err()).contains("./mvnw");
  }
}
