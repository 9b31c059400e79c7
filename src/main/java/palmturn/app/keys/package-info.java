/** What keys do: one list of actions, the keys that the user gave them, and giving them others. */
@NullMarked
package palmturn.app.keys;

import org.jspecify.annotations.NullMarked;
