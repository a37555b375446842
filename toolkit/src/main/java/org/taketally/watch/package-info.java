/** Whether the running season is going wrong. Never writes records. */
package org.taketally.watch;
