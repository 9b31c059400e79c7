package palmturn.lab.draw;

import java.util.List;
import palmturn.trial.Span;

/**
 * The truth of a drawn clip, known from its parameters.
 *
 * @param parameters what was asked for
 * @param contacts every contact and every miss, in order
 * @param places where the middle of the moving palm is over the target, for each contact
 * @param spans faults over a stretch, in order
 * @param frameTimesS when each picture is shown: the middle of its exposure
 * @param exposureS how long each exposure lasts
 * @param soundDelayS how much later the sound of a contact is than the contact
 * @param soundHz samples a second
 * @param cmPerPixel at the moving elbow, in the plane of the picture
 * @param elbowPx the moving elbow's place in the first picture, x and y, without shake
 * @param targetPx the middle of the target palm in the first picture, x and y, without shake
 * @param seriesHz samples a second of the series, from time 0
 * @param rotationDeg turn of the hand about the forearm: 0 with the palm down on the target, 180
 *     with the palm up
 * @param bentWristDeg bend of the moving hand at its wrist, to the palm over 0, to its back under
 *     0; a {@code BENT_WRIST} stretch bends it down to the target, so that it is over 0 at palm
 *     slaps and under 0 at back slaps
 * @param gapCm height of the moving hand over where it would touch
 * @param elbowRightCm displacement of the moving elbow to the right of the picture, by {@code
 *     cmPerPixel}
 * @param elbowUpCm the same up the picture
 * @param elbowCm length of that displacement
 * @param elbowInSpaceCm length of its displacement in space
 * @param realised the measures of these contacts
 */
public record Truth(
    ClipParameters parameters,
    List<Contact> contacts,
    List<TargetPlace> places,
    List<Span> spans,
    double[] frameTimesS,
    double exposureS,
    double soundDelayS,
    int soundHz,
    double cmPerPixel,
    double[] elbowPx,
    double[] targetPx,
    double seriesHz,
    double[] rotationDeg,
    double[] bentWristDeg,
    double[] gapCm,
    double[] elbowRightCm,
    double[] elbowUpCm,
    double[] elbowCm,
    double[] elbowInSpaceCm,
    RealisedMeasures realised) {}
