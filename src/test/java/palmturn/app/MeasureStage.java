package palmturn.app;

import javafx.application.Application;

/** Starts the measuring of the stage; the one argument is the clip. */
public final class MeasureStage {
  private MeasureStage() {}

  public static void main(String[] args) {
    // A class that is an application itself can't be started from the class path.
    Application.launch(MeasuredWindow.class, args);
  }
}
