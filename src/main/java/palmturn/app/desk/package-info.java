/** The open session, its services and the trial on the stage. */
@NullMarked
package palmturn.app.desk;

import org.jspecify.annotations.NullMarked;
