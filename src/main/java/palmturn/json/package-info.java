/**
 * Every JSON form that is read or printed. The forms are written by hand against a tree, so that a
 * record of another room can change its shape without changing a file, and so that every fault in a
 * file is named by its path.
 */
@NullMarked
package palmturn.json;

import org.jspecify.annotations.NullMarked;
