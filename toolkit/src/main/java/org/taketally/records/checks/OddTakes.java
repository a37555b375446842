package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.CULTIVAR;
import static org.taketally.records.columns.RecordColumn.GRAFT_DATE;
import static org.taketally.records.columns.RecordColumn.ROOTSTOCK;
import static org.taketally.records.columns.RecordColumn.SITE;

import it.unimi.dsi.fastutil.longs.Long2LongLinkedOpenHashMap;
import it.unimi.dsi.fastutil.longs.Long2LongMap;
import java.util.Locale;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.terms.CropProfile;
import org.taketally.terms.CropProfile.Item;

/** Sums of grafts and takes, and what looks odd about them when all rows have been read. */
final class OddTakes {

  /** From so many grafts on, all or none taken is a reason to look. */
  private static final int MANY = 100;

  /** Groups of grafts needed, and grafts in each, to judge whether results vary enough. */
  private static final int GROUPS = 20;

  private static final int GROUP_GRAFTS = 10;
  private static final double HARDLY_CHANCE = 1e-4;

  private final RecordsLayout layout;
  private final Counts pairings = new Counts();
  private final Counts days = new Counts();
  private long grafts;
  private long takes;

  OddTakes(RecordsLayout layout) {
    this.layout = layout;
  }

  void add(RecordRow row) {
    if (!row.assessed()) {
      return;
    }
    grafts += row.grafts();
    takes += row.takes();
    pairings.add(Derivation.key(row.code(CULTIVAR), row.code(ROOTSTOCK)), row);
    if (row.has(SITE) && row.has(GRAFT_DATE)) {
      days.add(Derivation.key(row.code(SITE), row.code(GRAFT_DATE)), row);
    }
  }

  void close(String sources, CropProfile crop, ProblemLog log) {
    Place everywhere = Place.whole(sources);
    allOrNone(everywhere, log);
    unusual(everywhere, crop, log);
    tooAlike(everywhere, log);
  }

  private void allOrNone(Place everywhere, ProblemLog log) {
    pairings.forEach(
        (key, made, taken) -> {
          if (made > MANY && (taken == 0 || taken == made)) {
            String pairing =
                Derivation.pairingName(
                    layout.track(CULTIVAR).levels().name((int) (key >>> 32)),
                    layout.track(ROOTSTOCK).levels().name((int) key));
            log.add(
                ProblemKind.ALL_OR_NONE,
                everywhere,
                "",
                () ->
                    new ProblemText(
                        "%s: %,d of %,d took".formatted(pairing, taken, made),
                        "some failures and some takes among so many",
                        "check that failures were written down, and that it isn't one bad lot"));
          }
        });
  }

  private void unusual(Place everywhere, CropProfile crop, ProblemLog log) {
    if (crop == null || grafts < MANY) {
      return;
    }
    double share = takes / (double) grafts;
    OptionalDouble low = crop.number(Item.TAKE_LOW);
    OptionalDouble high = crop.number(Item.TAKE_HIGH);
    if (share < low.orElse(0) || share > high.orElse(1)) {
      log.add(
          ProblemKind.UNUSUAL_TAKE,
          everywhere,
          "",
          () ->
              new ProblemText(
                  percent(share)
                      + " of "
                      + String.format(Locale.ROOT, "%,d", grafts)
                      + " grafts took",
                  "between "
                      + percent(low.orElse(0))
                      + " and "
                      + percent(high.orElse(1))
                      + " for "
                      + crop.crop(),
                  "check what was counted as a take, and whether failures were written down"));
    }
  }

  /**
   * Compares how the take varies from one grafting day to the next with what chance alone would do
   * (Pearson's chi-squared of a common rate); less is a sign of copied or smoothed results.
   */
  private void tooAlike(Place everywhere, ProblemLog log) {
    double[] sums = new double[3];
    days.forEach((key, made, taken) -> addGroup(sums, made, taken));
    if (sums[0] < GROUPS || sums[2] == 0 || sums[2] == sums[1]) {
      return;
    }
    double rate = sums[2] / sums[1];
    double[] chiSquared = new double[1];
    days.forEach(
        (key, made, taken) -> {
          if (made >= GROUP_GRAFTS) {
            double off = taken - made * rate;
            chiSquared[0] += off * off / (made * rate * (1 - rate));
          }
        });
    double pValue = ChiSquaredDistribution.of(sums[0] - 1).cumulativeProbability(chiSquared[0]);
    if (pValue < HARDLY_CHANCE) {
      log.add(
          ProblemKind.TOO_ALIKE,
          everywhere,
          "",
          () ->
              new ProblemText(
                  "almost the same take on each of %.0f grafting days".formatted(sums[0]),
                  "days that differ at least as much as chance makes them",
                  "check that results weren't copied down or filled in from a mean"));
    }
  }

  private static void addGroup(double[] sums, long made, long taken) {
    if (made >= GROUP_GRAFTS) {
      sums[0]++;
      sums[1] += made;
      sums[2] += taken;
    }
  }

  private static String percent(double share) {
    return "%.0f %%".formatted(100 * share);
  }

  /**
   * Grafts and takes by key, in the order met. Rows that follow each other mostly have the same
   * key: they are added up before the table is asked.
   */
  private static final class Counts {
    private static final int BITS = 31;
    private static final long LOW = (1L << BITS) - 1;
    private final Long2LongLinkedOpenHashMap sums = new Long2LongLinkedOpenHashMap();
    private long runKey;
    private long run;

    interface Visitor {
      void see(long key, long grafts, long takes);
    }

    void add(long key, RecordRow row) {
      if (key != runKey) {
        endRun();
        runKey = key;
      }
      run += ((long) row.grafts() << BITS) + row.takes();
    }

    private void endRun() {
      if (run > 0) {
        sums.addTo(runKey, run);
        run = 0;
      }
    }

    void forEach(Visitor visitor) {
      endRun();
      for (Long2LongMap.Entry one : sums.long2LongEntrySet()) {
        long sum = one.getLongValue();
        visitor.see(one.getLongKey(), sum >>> BITS, sum & LOW);
      }
    }
  }
}
