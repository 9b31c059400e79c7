/** Undo and redo over immutable states, each step with a sentence that says what it did. */
@NullMarked
package palmturn.edit;

import org.jspecify.annotations.NullMarked;
