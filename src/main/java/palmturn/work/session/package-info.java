/** Sessions made, opened, changed and checked, and clips brought into them. */
@NullMarked
package palmturn.work.session;

import org.jspecify.annotations.NullMarked;
