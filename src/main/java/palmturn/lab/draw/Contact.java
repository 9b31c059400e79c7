package palmturn.lab.draw;

import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/**
 * A moment at which the moving hand touches the target, or should have.
 *
 * @param timeS when, exactly, on the picture's clock
 * @param side the side of the moving hand turned down
 * @param zone where on it the target was touched
 * @param kind slap, double, part-turn or missed
 * @param level loudness of the slap, 1 for a square one, 0 for none
 */
public record Contact(double timeS, Side side, Zone zone, Slap.Kind kind, double level) {}
