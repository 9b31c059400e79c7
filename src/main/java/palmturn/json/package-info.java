/**
 * Every JSON form that is read or printed. The forms are written against a tree, so that a record
 * of another room can change its shape without changing a file, and so that every fault in a file
 * is named by its path. Where a record's components are named as a form's keys, the form lists them
 * and takes them from the record.
 */
@NullMarked
package palmturn.json;

import org.jspecify.annotations.NullMarked;
