/**
 * The user's own folders and what the program keeps there: settings, recent sessions, messages
 * seen, and the reading of files that a coach may edit.
 */
@NullMarked
package palmturn.settings;

import org.jspecify.annotations.NullMarked;
