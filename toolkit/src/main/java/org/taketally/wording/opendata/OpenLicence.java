package org.taketally.wording.opendata;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A licence under which data may be passed on, by its identifier in the SPDX list. */
public enum OpenLicence {
  /** Nothing reserved. */
  CC0("CC0-1.0", "https://creativecommons.org/publicdomain/zero/1.0/", "CC0 1.0 Universal"),
  /** Whoever uses it names the source. */
  CC_BY(
      "CC-BY-4.0",
      "https://creativecommons.org/licenses/by/4.0/",
      "Creative Commons Attribution 4.0"),
  /** As {@link #CC_BY}, and passes it on under the same terms. */
  CC_BY_SA(
      "CC-BY-SA-4.0",
      "https://creativecommons.org/licenses/by-sa/4.0/",
      "Creative Commons Attribution Share-Alike 4.0"),
  /** Nothing reserved, for databases. */
  PDDL(
      "PDDL-1.0",
      "https://opendatacommons.org/licenses/pddl/1-0/",
      "Open Data Commons Public Domain Dedication and License 1.0"),
  /** Attribution, for databases. */
  ODC_BY(
      "ODC-By-1.0",
      "https://opendatacommons.org/licenses/by/1-0/",
      "Open Data Commons Attribution License 1.0"),
  /** Attribution and the same terms, for databases. */
  ODBL(
      "ODbL-1.0",
      "https://opendatacommons.org/licenses/odbl/1-0/",
      "Open Data Commons Open Database License 1.0");

  private final String id;
  private final String url;
  private final String title;

  OpenLicence(String id, String url, String title) {
    this.id = id;
    this.url = url;
    this.title = title;
  }

  /**
   * The identifier.
   *
   * @return e.g. {@code CC-BY-4.0}
   */
  public String id() {
    return id;
  }

  /**
   * Where its text stands.
   *
   * @return an address
   */
  public String url() {
    return url;
  }

  /**
   * Its full name.
   *
   * @return in English, as its makers give it
   */
  public String title() {
    return title;
  }

  /**
   * The licence of an identifier.
   *
   * @param id in any case
   * @return empty if it is none of these
   */
  public static Optional<OpenLicence> of(String id) {
    return Arrays.stream(values()).filter(one -> one.id.equalsIgnoreCase(id)).findFirst();
  }

  /**
   * All identifiers.
   *
   * @return in the order of this list
   */
  public static List<String> ids() {
    return Arrays.stream(values()).map(OpenLicence::id).toList();
  }
}
