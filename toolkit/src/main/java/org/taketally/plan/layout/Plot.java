package org.taketally.plan.layout;

import java.util.Optional;

/**
 * Grafts of one pairing made one after the other in one session.
 *
 * @param number 1, 2, ... in the order of work
 * @param session who and when
 * @param block name of the block the plot is compared in, e.g. {@code 3}
 * @param bed tray or bed of one stock the plot stands in; empty unless stocks come by the bed
 * @param pairing what is grafted
 * @param grafts how many, 1 or more
 */
public record Plot(
    int number, Session session, String block, Optional<String> bed, Pairing pairing, int grafts) {}
