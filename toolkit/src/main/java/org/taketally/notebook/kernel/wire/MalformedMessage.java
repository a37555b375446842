package org.taketally.notebook.kernel.wire;

/** Frames that are no signed message of the protocol. The sender gets no answer. */
public final class MalformedMessage extends Exception {

  private static final long serialVersionUID = 1L;

  MalformedMessage(String reason) {
    super(reason);
  }
}
