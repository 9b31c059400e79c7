/**
 * Vector charts, the same for screen and report: painters that draw on any {@code Graphics2D}, the
 * look's colours and fonts, and the way from a painter to SVG.
 */
@NullMarked
package palmturn.chart;

import org.jspecify.annotations.NullMarked;
