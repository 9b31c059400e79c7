/** Keyboard actions: the list of all actions, their keys, and changing the keys. */
@NullMarked
package palmturn.app.keys;

import org.jspecify.annotations.NullMarked;
