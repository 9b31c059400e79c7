/**
 * The use cases that command line and app share, a folder each, with one error meant for users.
 * Progress and stopping go through {@link palmturn.clip.Progress}.
 */
@NullMarked
package palmturn.work;

import org.jspecify.annotations.NullMarked;
