package palmturn.app.stage;

import palmturn.trial.Estimate;

/**
 * The visible part of the picture and its zoom. Pure geometry, so that a point on the screen maps
 * to the exact pixel.
 *
 * @param zoom how much larger than the whole picture fits, 1 or more
 * @param x what lies in the middle, as a share of the picture's width
 * @param y the same, as a share of its height
 */
record Framing(double zoom, double x, double y) {
  /** All of the picture. */
  static final Framing WHOLE = new Framing(1, 0.5, 0.5);

  private static final double MAX_ZOOM = 32;

  /** Room left around the hands, as a share of their region. */
  private static final double AROUND = 0.25;

  Framing {
    zoom = Math.max(1, Math.min(MAX_ZOOM, zoom));
  }

  /**
   * The sizes of the pane and the picture.
   *
   * @param width of the pane, pixels of the screen
   * @param height of the pane, pixels of the screen
   * @param across width of the upright picture, its own pixels
   * @param down height of the upright picture, its own pixels
   */
  record Sizes(double width, double height, double across, double down) {
    double fit() {
      return Math.min(width / across, height / down);
    }
  }

  /**
   * The placement of the picture on the screen.
   *
   * @param scale pixels of the screen in one of the picture
   * @param left where the picture begins on the screen
   * @param top the same, downwards
   */
  record Placement(double scale, double left, double top) {
    /** Returns which pixel of the picture is at a place of the screen, from the left. */
    double pictureX(double screenX) {
      return (screenX - left) / scale;
    }

    /** Returns the same, from above. */
    double pictureY(double screenY) {
      return (screenY - top) / scale;
    }
  }

  /** Returns where the picture lies; it never leaves room empty that it could fill. */
  Placement place(Sizes room) {
    double scale = room.fit() * zoom;
    return new Placement(
        scale,
        edge(room.width(), room.across() * scale, x),
        edge(room.height(), room.down() * scale, y));
  }

  private static double edge(double room, double size, double middle) {
    double edge = size <= room ? (room - size) / 2 : room / 2 - middle * size;
    return Math.round(size <= room ? edge : Math.max(room - size, Math.min(0, edge)));
  }

  /** Returns the picture larger, or smaller, with the same pixel at a place of the screen. */
  Framing zoomed(double factor, double screenX, double screenY, Sizes room) {
    Placement before = place(room);
    double keptX = before.pictureX(screenX);
    double keptY = before.pictureY(screenY);
    Framing larger = new Framing(zoom * factor, x, y);
    double scale = room.fit() * larger.zoom();
    return larger.centredOn(
        keptX + (room.width() / 2 - screenX) / scale,
        keptY + (room.height() / 2 - screenY) / scale,
        room);
  }

  /** Returns the picture shifted by pixels of the screen. */
  Framing shifted(double right, double down, Sizes room) {
    Placement lie = place(room);
    return centredOn(
        lie.pictureX(room.width() / 2 - right), lie.pictureY(room.height() / 2 - down), room);
  }

  /** Returns a region as large as it fits, with some room around it. */
  static Framing zoomedTo(Estimate.Region region, Sizes room) {
    double grown = 1 + 2 * AROUND;
    double scale =
        Math.min(
            room.width() / (region.width() * grown), room.height() / (region.height() * grown));
    return new Framing(scale / room.fit(), 0.5, 0.5)
        .centredOn(region.x() + region.width() / 2, region.y() + region.height() / 2, room);
  }

  private Framing centredOn(double pictureX, double pictureY, Sizes room) {
    double scale = room.fit() * zoom;
    return new Framing(
        zoom,
        clampedMiddle(pictureX / room.across(), room.width() / (room.across() * scale)),
        clampedMiddle(pictureY / room.down(), room.height() / (room.down() * scale)));
  }

  /** Keeps a middle where the picture fills the room, so that a shift back is felt at once. */
  private static double clampedMiddle(double middle, double shown) {
    return shown >= 1 ? 0.5 : Math.max(shown / 2, Math.min(1 - shown / 2, middle));
  }
}
