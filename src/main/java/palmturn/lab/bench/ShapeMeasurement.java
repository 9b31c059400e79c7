package palmturn.lab.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One clip, measured without and with the shape of the hands.
 *
 * @param name the file's name
 * @param fps frames a second, from the median distance of frames
 * @param durationS how long it lasts
 * @param withoutShape by sound and motion, the side of one slap named
 * @param withShape by sound, motion and shape, nothing named; null where the networks are not
 *     installed
 * @param estimateS time that the estimate with shape took; null where there is none
 * @param warnings what that estimate said
 */
public record ShapeMeasurement(
    String name,
    double fps,
    double durationS,
    ShapeComparison withoutShape,
    @Nullable ShapeComparison withShape,
    @Nullable Double estimateS,
    List<String> warnings) {
  boolean hasTrial() {
    return withoutShape.contacts() > 0;
  }
}
