package org.bytedeco.opencv.global;

/**
 * Stands in for OpenCV's windows, which Palmturn doesn't use. The library's own class loads native
 * code that needs GTK 2, and its optical flow and camera geometry load that class for nothing, so
 * that on a Linux without GTK 2 no estimate could be made (bytedeco/javacpp-presets issue 593).
 */
@SuppressWarnings({"checkstyle:TypeName", "NullAway"})
public class opencv_highgui extends org.bytedeco.opencv.presets.opencv_highgui {}
