/** What the build makes: the library, the program's jar, and the tool that slims it. */
package org.taketally.build;
