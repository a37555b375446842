/**
 * Takes, all else being equal: averages of a fit over the conditions of the records, the model
 * suggested for records, and the nearest model they can carry.
 */
package org.taketally.answers.adjusted;
