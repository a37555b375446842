package org.taketally.publish.opendata;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.taketally.wording.opendata.OpenLicence;

/**
 * What a package says of itself.
 *
 * @param title what the data are, in a few words
 * @param creators who made the records or answers for them, at least one
 * @param licence under which they may be passed on
 * @param named whether grafters' names, notes and rows set aside go out as they are
 * @param origin where the package comes from
 * @param place where and of what the grafts were made
 */
public record PackageOptions(
    String title,
    List<String> creators,
    OpenLicence licence,
    boolean named,
    Origin origin,
    Place place) {

  /**
   * Where a package comes from.
   *
   * @param version of the toolkit
   * @param command options as typed
   * @param seed of everything random
   * @param crop name of the crop profile, if one was used
   * @param dictionary the dictionary the sheets were read with, JSON, if there was one
   * @param created day the package was made
   */
  public record Origin(
      String version,
      List<String> command,
      long seed,
      Optional<String> crop,
      Optional<String> dictionary,
      LocalDate created) {
    public Origin {
      command = List.copyOf(command);
    }
  }

  /**
   * What the records themselves don't hold.
   *
   * @param country of the sites, two letters of ISO 3166
   * @param organism species of the scions, scientific name
   */
  public record Place(Optional<String> country, Optional<String> organism) {}

  public PackageOptions {
    creators = List.copyOf(creators);
    if (title.isBlank() || creators.isEmpty()) {
      throw new IllegalArgumentException("a package needs a title and at least one creator");
    }
  }

  /** The title as an identifier: lower case letters, digits and hyphens. */
  String name() {
    String plain =
        java.text.Normalizer.normalize(title, java.text.Normalizer.Form.NFD)
            .toLowerCase(Locale.ROOT)
            .replaceAll("\\p{M}+", "")
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-+|-+$", "");
    return plain.isEmpty() ? "graft-records" : plain;
  }
}
