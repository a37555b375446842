package org.taketally.model;

/**
 * Groups between which, but not within which, a column changes: they are the units that count, not
 * the grafts in them.
 *
 * @param groups a varying column, e.g. {@code block}
 * @param count groups in the cells used, 2 or more
 * @param degrees degrees of freedom they leave, 1 or more: {@link TakeFit#groupDegrees}
 */
public record BetweenGroups(String groups, int count, int degrees) {}
