package org.taketally.publish.privacy;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.taketally.answers.counts.TakeCount;

/**
 * The take of all grafts together, said so coarsely that each of the few people behind it, taking
 * off their own, still can't tell what the others' came to.
 *
 * @param grafts grafts assessed
 * @param low fewest takes it may stand for
 * @param high most takes it may stand for, not below {@code low}
 * @param parts parts the whole was divided into: 10, 4 or 2
 * @param part which of them, from 0 for none up; for tenths the nearest, else the part it lies in
 */
public record JointTake(long grafts, long low, long high, int parts, int part) {

  /** Values that must stay possible for the others' takes. */
  private static final int LEAST_POSSIBLE = 2;

  private static final List<Integer> PARTS = List.of(10, 4, 2);

  /**
   * The finest statement that tells on nobody.
   *
   * @param evidence who grafted what
   * @param statedMembers how many people made the grafts if the records don't say; empty if nobody
   *     knows
   * @param rule thresholds; at least its grafts are needed
   * @return empty if even halves would tell, or one person made all, or nobody knows who did
   */
  public static Optional<JointTake> of(
      GraftsByMember evidence, OptionalInt statedMembers, PrivacyRule rule) {
    BitSet all = evidence.all();
    int people = evidence.namesMembers() ? evidence.members(all) : statedMembers.orElse(0);
    if (people < 2 || evidence.count(all).grafts() < rule.grafts()) {
      return Optional.empty();
    }
    TakeCount count = evidence.count(all);
    return PARTS.stream()
        .map(parts -> in(count, parts))
        .filter(joint -> tellsNobody(joint, evidence))
        .findFirst();
  }

  private static JointTake in(TakeCount count, int parts) {
    long grafts = count.grafts();
    int part = partOf(count.takes(), grafts, parts);
    long low = count.takes();
    while (low > 0 && partOf(low - 1, grafts, parts) == part) {
      low--;
    }
    long high = count.takes();
    while (high < grafts && partOf(high + 1, grafts, parts) == part) {
      high++;
    }
    return new JointTake(grafts, low, high, parts, part);
  }

  private static int partOf(long takes, long grafts, int parts) {
    double share = (double) takes / grafts;
    return parts == 10
        ? (int) Math.round(10 * share)
        : Math.min(parts - 1, (int) Math.floor(parts * share));
  }

  /**
   * Whether some split of grafts and takes between people would let one tell the others' takes:
   * those where one had all takes and the statement allows no more, or the others had no failure
   * and it allows no fewer.
   */
  private static boolean mayTell(JointTake joint, long takes) {
    boolean noMore = takes == joint.high() && takes < joint.grafts();
    boolean noFewer = takes == joint.low() && takes > 0;
    return noMore || noFewer;
  }

  private static boolean tellsNobody(JointTake joint, GraftsByMember evidence) {
    TakeCount all = evidence.count(evidence.all());
    boolean tooFine = joint.high() - joint.low() < LEAST_POSSIBLE;
    if (tooFine || (evidence.unnamedGrafts() > 0 && mayTell(joint, all.takes()))) {
      return false;
    }
    return evidence.memberGroups().stream()
        .allMatch(
            own -> {
              TakeCount mine = evidence.count(own);
              long least = Math.max(0, joint.low() - mine.takes());
              long most = Math.min(joint.grafts() - mine.grafts(), joint.high() - mine.takes());
              return most - least >= LEAST_POSSIBLE - 1;
            });
  }
}
