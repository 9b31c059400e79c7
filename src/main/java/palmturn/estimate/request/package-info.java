/** The question put to an estimate: the stretch, the hand, and hints from a person. */
@NullMarked
package palmturn.estimate.request;

import org.jspecify.annotations.NullMarked;
