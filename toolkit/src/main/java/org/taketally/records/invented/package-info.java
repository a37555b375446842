/**
 * Makes the invented records of the Halden Bay growers' circle from a known truth and a seed. Start
 * at {@link org.taketally.records.invented.InventedRecords}. Nothing here is used to read or judge
 * records.
 */
package org.taketally.records.invented;
