package org.taketally.files;

import java.io.IOException;

/** Writing was refused, because something of a person's stands where a file was to go. */
public final class WouldReplace extends IOException {

  private static final long serialVersionUID = 1L;

  WouldReplace(String sentence) {
    super(sentence);
  }
}
