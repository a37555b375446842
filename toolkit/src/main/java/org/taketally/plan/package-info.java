/** What to do next: the size and layout of a trial, the size of an order. Reads no graft files. */
package org.taketally.plan;
