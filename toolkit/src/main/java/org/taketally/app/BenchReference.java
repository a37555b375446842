package org.taketally.app;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/**
 * What another program found for the benchmark's model.
 *
 * @param source program and version
 * @param logLikelihood of single grafts
 * @param fixed effects, in the order of the fit
 * @param standardErrors of the fixed effects
 * @param standardDeviations by varying column
 */
record BenchReference(
    String source,
    double logLikelihood,
    double[] fixed,
    double[] standardErrors,
    Map<String, Double> standardDeviations) {

  /** Empty for sizes no other program finished. */
  static Optional<BenchReference> of(String size) {
    try (Reader reader =
        new InputStreamReader(
            BenchReference.class.getResourceAsStream("bench/reference.json"),
            StandardCharsets.UTF_8)) {
      JsonObject all = new Gson().fromJson(reader, JsonObject.class);
      return Optional.ofNullable(all.get(size))
          .map(found -> new Gson().fromJson(found, BenchReference.class));
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return source.hashCode();
  }
}
