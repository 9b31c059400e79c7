/** Files made for people: the report, the page of keys, marks as CSV. */
@NullMarked
package palmturn.work.report;

import org.jspecify.annotations.NullMarked;
