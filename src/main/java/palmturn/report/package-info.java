/**
 * The output for people to read: one self-contained HTML page, the same as PDF, marks as CSV, and
 * marks as captions. It touches no file: text goes out and comes in, pictures are handed to it.
 */
@NullMarked
package palmturn.report;

import org.jspecify.annotations.NullMarked;
