package palmturn.app.differences;

import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.trial.Trial;

/**
 * A trial under review.
 *
 * @param pictures of its clip
 * @param windowS the protocol's seconds, real time
 */
public record ReviewedTrial(
    Trial trial, FrameTable frames, Stage.PictureSource pictures, double windowS) {}
