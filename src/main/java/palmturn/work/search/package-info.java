/** Sessions and clips found in folders. */
@NullMarked
package palmturn.work.search;

import org.jspecify.annotations.NullMarked;
