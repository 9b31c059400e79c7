package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import palmturn.chart.Samples;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

class WebVttTest {
  @Test
  void marksBecomeCaptionsInOrderOfTime() {
    Reading reading =
        Reading.begin("A", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.SLAP, 3661.25, 0.01, Side.PALM, Zone.CENTRE))
            .plus(
                Slap.onFrame(Slap.Kind.SLAP, 3661.5, 0.01, Side.BACK, Zone.FINGERS)
                    .withNote("a <b>\n\n--> & c"))
            .withSpans(List.of(new Span(Span.SpanKind.ELBOW_OUT, 3661.3, 3662, "", Extra.NONE)));
    assertEquals(
        """
        WEBVTT H-07, right hand

        01:01:01.250 --> 01:01:01.500
        1 palm

        01:01:01.300 --> 01:01:02.000 line:0
        elbow out

        01:01:01.500 --> 01:01:02.000
        2 back, fingers: a &lt;b&gt; --&gt; &amp; c
        """,
        WebVtt.write("H-07, right hand", reading));
  }

  @Test
  void everyCueStartsNoSoonerThanTheOneBeforeAndEndsAfterItStarts() {
    Matcher cue =
        Pattern.compile(
                "(?m)^(\\d{2,}:\\d\\d:\\d\\d\\.\\d{3}) --> (\\d{2,}:\\d\\d:\\d\\d\\.\\d{3})")
            .matcher(WebVtt.write("every kind", Samples.everyKind()));
    String before = "";
    int cues = 0;
    while (cue.find()) {
      assertTrue(cue.group(1).compareTo(before) >= 0);
      assertTrue(cue.group(2).compareTo(cue.group(1)) > 0);
      before = cue.group(1);
      cues++;
    }
    assertEquals(Samples.everyKind().slaps().size() + Samples.everyKind().spans().size(), cues);
    assertFalse(WebVtt.write("a\n\nb", Samples.everyKind()).startsWith("WEBVTT a\n\nb"));
  }
}
