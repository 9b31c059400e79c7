package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.ProgressScore;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.ProgressScore.Point;
import palmturn.measure.ProgressScore.Step;
import palmturn.measure.Quality;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;

/**
 * One quality of both hands over sessions on one scale, the left hand open and to the left, the
 * right hand filled and to the right: means and trials block after block, the noise about the first
 * as a band, and the drills done between.
 */
public final class ProgressChart {
  /** The least height of the drawing, pixels. */
  public static final double HEIGHT = 196;

  private static final Font BOLD = Lato.bold(13);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.UK);
  private static final DateTimeFormatter DAY_AND_YEAR =
      DateTimeFormatter.ofPattern("d MMM uu", Locale.UK);
  private static final double GUTTER = 44;
  private static final double BETWEEN = 24;
  private static final double HEAD = 26;
  private static final double FOOT = 50;

  /** Two sessions stand farther apart than two blocks of one. */
  private static final double SESSION_GAP = 0.6;

  private ProgressChart() {}

  /** Draws both hands; nothing where neither has a figure in this quality. */
  public static void paint(
      Graphics2D g,
      Rectangle2D area,
      ProgressScore score,
      Quality quality,
      @Nullable Double limit,
      Palette palette) {
    List<Course> courses =
        Stream.of(Hand.LEFT, Hand.RIGHT)
            .flatMap(hand -> score.course(hand, quality).stream())
            .toList();
    if (courses.isEmpty()) {
      return;
    }
    double top = area.getMinY() + HEAD;
    double foot = area.getMaxY() - FOOT;
    Axis axis = Axis.of(quality, values(courses, limit), ends(courses), foot, top);
    double width = (area.getWidth() - GUTTER - BETWEEN) / 2;
    axis.paintBeside(g, area.getMinX() + GUTTER - 8, palette);
    for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
      double left = area.getMinX() + GUTTER + (hand == Hand.LEFT ? 0 : width + BETWEEN);
      Panel panel =
          new Panel(
              g,
              palette,
              axis,
              score.steps(),
              hand,
              new Rectangle2D.Double(left, top, width, foot - top));
      panel.ground(limit);
      score.course(hand, quality).ifPresent(panel::course);
      panel.foot();
    }
  }

  private static double[] values(List<Course> courses, @Nullable Double limit) {
    DoubleStream trials =
        courses.stream()
            .flatMap(course -> course.points().stream())
            .flatMap(point -> point.trials().stream())
            .mapToDouble(Double::doubleValue);
    return DoubleStream.concat(
            trials, limit == null ? DoubleStream.empty() : DoubleStream.of(limit))
        .toArray();
  }

  private static double[] ends(List<Course> courses) {
    return courses.stream()
        .flatMap(course -> course.points().stream())
        .flatMap(
            point ->
                Stream.of(
                    Optional.ofNullable(point.noiseLow()), Optional.ofNullable(point.noiseHigh())))
        .flatMap(Optional::stream)
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  /** One hand's half of the chart. */
  private record Panel(
      Graphics2D g, Palette palette, Axis axis, List<Step> steps, Hand hand, Rectangle2D plot) {

    void ground(@Nullable Double limit) {
      g.setColor(palette.sheet());
      g.fill(plot);
      axis.paintGrid(g, plot.getMinX(), plot.getMaxX(), palette);
      g.setFont(BOLD);
      g.setColor(palette.ink());
      String name = hand == Hand.LEFT ? "Left hand" : "Right hand";
      g.drawString(name, (float) plot.getMinX(), (float) (plot.getMinY() - 10));
      if (limit != null) {
        double y = axis.at(limit);
        g.setStroke(new BasicStroke(2.25f));
        BeatStripPainter.line(g, plot.getMaxX() - 14, y, plot.getMaxX(), y);
        String words = "limit " + Axis.label(limit);
        g.setFont(Axis.FONT);
        g.setColor(palette.ink2());
        double right = plot.getMaxX() - LabelPlacer.width(Axis.FONT, words);
        g.drawString(words, (float) right, (float) (plot.getMinY() - 10));
      }
    }

    void course(Course course) {
      List<Point> points = course.points();
      band(points);
      g.setColor(palette.ink2());
      g.setStroke(new BasicStroke(1.25f));
      for (int i = 1; i < points.size(); i++) {
        Point from = points.get(i - 1);
        Point to = points.get(i);
        BeatStripPainter.line(
            g, x(from.step()), axis.at(from.mean()), x(to.step()), axis.at(to.mean()));
      }
      for (Point point : points) {
        double x = x(point.step());
        g.setColor(palette.ink2());
        g.setStroke(new BasicStroke(1.25f));
        for (double trial : point.trials()) {
          BeatStripPainter.line(g, x - 9, axis.at(trial), x + 9, axis.at(trial));
        }
        g.setColor(hand == Hand.RIGHT ? palette.ink() : palette.sheet());
        g.fill(MarkShapes.disc(x, axis.at(point.mean()), 5.5));
        g.setColor(palette.ink());
        g.setStroke(new BasicStroke(2.25f));
        g.draw(MarkShapes.disc(x, axis.at(point.mean()), 5.5));
      }
    }

    /** From the first block on; its width follows the number of trials of each later one. */
    private void band(List<Point> points) {
      List<Point2D> upper = new ArrayList<>();
      List<Point2D> lower = new ArrayList<>();
      for (Point point : points) {
        Double low = point.noiseLow();
        Double high = point.noiseHigh();
        if (low == null || high == null) {
          continue;
        }
        if (upper.isEmpty()) {
          double x = x(points.get(0).step());
          upper.add(new Point2D.Double(x, axis.clampedAt(high)));
          lower.add(0, new Point2D.Double(x, axis.clampedAt(low)));
        }
        upper.add(new Point2D.Double(x(point.step()), axis.clampedAt(high)));
        lower.add(0, new Point2D.Double(x(point.step()), axis.clampedAt(low)));
      }
      if (upper.isEmpty()) {
        return;
      }
      Path2D band = new Path2D.Double();
      band.moveTo(upper.get(0).getX(), upper.get(0).getY());
      Stream.concat(upper.stream().skip(1), lower.stream())
          .forEach(at -> band.lineTo(at.getX(), at.getY()));
      band.closePath();
      g.setColor(palette.inkBand());
      g.fill(band);
    }

    /** The drills between blocks, and the days. */
    void foot() {
      double foot = plot.getMaxY();
      g.setStroke(new BasicStroke(1));
      g.setColor(palette.edge());
      BeatStripPainter.line(g, plot.getMinX(), foot, plot.getMaxX(), foot);
      LabelPlacer drills = new LabelPlacer();
      LabelPlacer days = new LabelPlacer();
      for (int i = 0; i < steps.size(); i++) {
        g.setColor(palette.edge());
        g.setStroke(new BasicStroke(1));
        BeatStripPainter.line(g, x(i), foot, x(i), foot + 5);
        Drill drill = steps.get(i).drill();
        if (drill != null) {
          boolean own = trains(drill);
          double x = i == 0 ? x(i) : (x(i - 1) + x(i)) / 2;
          g.setColor(own ? palette.ink() : palette.edge());
          g.setStroke(new BasicStroke(own ? 2.25f : 1));
          BeatStripPainter.line(g, x, foot, x, foot + 8);
          String name = drill.code().replace('-', ' ');
          drills.centred(
              g,
              own ? name : "(" + name + ")",
              inside(x, name),
              foot + 18,
              own ? palette.ink2() : palette.ink3());
        }
      }
      for (int from = 0; from < steps.size(); ) {
        int to = from;
        while (to + 1 < steps.size() && steps.get(to + 1).session() == steps.get(from).session()) {
          to++;
        }
        String day = day(steps.get(from).date());
        days.centred(g, day, inside((x(from) + x(to)) / 2, day), foot + 38, palette.ink3());
        from = to + 1;
      }
    }

    private double inside(double x, String words) {
      double half = LabelPlacer.width(Axis.FONT, words) / 2 + 4;
      return Math.max(plot.getMinX() + half - 4, Math.min(plot.getMaxX() - half + 4, x));
    }

    private boolean trains(Drill drill) {
      return drill.hand() == DrillHand.BOTH
          || drill.hand() == DrillHand.NONE
          || drill.hand() == (hand == Hand.LEFT ? DrillHand.LEFT : DrillHand.RIGHT);
    }

    private String day(LocalDate date) {
      boolean oneYear = steps.stream().map(each -> each.date().getYear()).distinct().count() == 1;
      return (oneYear ? DAY : DAY_AND_YEAR).format(date);
    }

    private double x(int step) {
      Step last = steps.get(steps.size() - 1);
      double whole = steps.size() - 1 + SESSION_GAP * last.session();
      double at = step + SESSION_GAP * steps.get(step).session();
      return whole == 0
          ? plot.getCenterX()
          : plot.getMinX() + 20 + at / whole * (plot.getWidth() - 56);
    }
  }
}
