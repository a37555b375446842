package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Budwood someone asks for.
 *
 * @param cultivar what is asked for; never blank
 * @param sticks sticks wanted, 1 or more
 * @param needed day they are to be grafted
 * @param wanted bud stage wanted; empty if any will do
 * @param buds bud stage on the mother trees today; empty if not said
 * @param onTree sticks that can be cut; empty if not said
 */
public record BudwoodRequest(
    String cultivar,
    int sticks,
    LocalDate needed,
    Optional<BudStage> wanted,
    Optional<BudStage> buds,
    OptionalInt onTree) {

  /** Bud stages in the order in which buds pass them. */
  public enum BudStage {
    /** At rest. */
    DORMANT,
    /** Swelling. */
    SWELLING,
    /** In leaf. */
    FLUSHED
  }

  /**
   * What the cultivar is called, however it is written: case and blanks make no other cultivar.
   *
   * @return the same for all requests of one cultivar
   */
  public String plainCultivar() {
    return SharedSticks.plain(cultivar);
  }
}
