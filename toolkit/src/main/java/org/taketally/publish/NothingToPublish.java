package org.taketally.publish;

/** Thrown when no page can be made without telling on members; the message says what is needed. */
public final class NothingToPublish extends RuntimeException {

  NothingToPublish(String message) {
    super(message);
  }
}
