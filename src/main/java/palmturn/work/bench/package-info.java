/** Measures the program against clips whose truth is known. */
@NullMarked
package palmturn.work.bench;

import org.jspecify.annotations.NullMarked;
