package org.taketally.app;

import picocli.CommandLine.IVersionProvider;

/** The version, as written into the jar's manifest. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    String version = Version.class.getPackage().getImplementationVersion();
    return new String[] {"taketally " + (version == null ? "(not packaged)" : version)};
  }
}
