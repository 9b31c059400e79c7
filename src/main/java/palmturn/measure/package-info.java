/**
 * A reading to figures. Each measure is declared once, in {@link palmturn.measure.Measures}, and
 * feeds table, tooltip, report and docs from there; docs/measures.md gives every formula.
 */
@NullMarked
package palmturn.measure;

import org.jspecify.annotations.NullMarked;
