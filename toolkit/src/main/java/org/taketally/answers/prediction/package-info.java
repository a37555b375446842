/** Whether another way of predicting does better on seasons it has not seen. */
package org.taketally.answers.prediction;
