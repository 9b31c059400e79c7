/** Sound onsets held against sounds whose onsets are known. */
@NullMarked
package palmturn.lab.onsets;

import org.jspecify.annotations.NullMarked;
