package org.taketally.records.invented;

import java.time.LocalDate;

/**
 * Budwood of one cultivar as cut, used in one session.
 *
 * @param session when, where and by whom it was used
 * @param block bench or bed
 * @param cultivar the cultivar
 * @param method how it was joined
 * @param budStage state of the buds
 * @param storageDays days from cutting to grafting
 * @param storageTempC temperature of the cool box
 * @param kept moist or dry
 */
record CutWood(
    Session session,
    String block,
    String cultivar,
    String method,
    String budStage,
    int storageDays,
    double storageTempC,
    String kept) {

  LocalDate cutDate() {
    return session.date().minusDays(storageDays);
  }
}
