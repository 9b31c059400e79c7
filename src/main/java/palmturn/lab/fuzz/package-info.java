/** Damaged clips, each read as the program reads it. */
@NullMarked
package palmturn.lab.fuzz;

import org.jspecify.annotations.NullMarked;
