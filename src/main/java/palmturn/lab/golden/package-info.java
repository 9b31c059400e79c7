/** Output of the whole program for known input, to compare two versions byte for byte. */
@NullMarked
package palmturn.lab.golden;

import org.jspecify.annotations.NullMarked;
