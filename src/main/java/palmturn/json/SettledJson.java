package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Function;
import palmturn.settle.ComparedMarks;
import palmturn.settle.Difference;
import palmturn.settle.DifferenceState;
import palmturn.settle.Matching;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Slap;
import palmturn.trial.Trial;

/**
 * Two readings beside each other as a script reads them: moments are media seconds on the picture's
 * clock, differences of times are real seconds.
 */
public final class SettledJson {
  private SettledJson() {}

  /** Returns the text that {@code settle --json} prints for one trial, laid out to be read. */
  public static String page(Trial trial, SettledTrial settled) {
    return JsonText.page(tree(trial, settled));
  }

  /** Returns the same on one line, for one trial of many. */
  public static String line(Trial trial, SettledTrial settled) {
    return JsonText.line(tree(trial, settled));
  }

  private static ObjectNode tree(Trial trial, SettledTrial settled) {
    ReadingComparison comparison = settled.comparison();
    ObjectNode node = RecordForm.of(trial, "trial=id.name");
    RecordForm.put(node, comparison, "a=a.name b=b.name");
    node.put("independent", comparison.a().independent() && comparison.b().independent());
    RecordForm.put(
        node,
        comparison,
        "toleranceS=tolerance.seconds tooFewFrames=tolerance.tooFewFrames"
            + " offsetRemovedS=removedS");
    node.set(
        "matched", RecordForm.all(comparison.matching().pairs(), pair -> pair(comparison, pair)));
    node.set("onlyA", slaps(comparison.a(), comparison.matching().onlyA()));
    node.set("onlyB", slaps(comparison.b(), comparison.matching().onlyB()));
    RecordForm.put(node, settled, "open decided stale");
    ArrayNode differences = node.putArray("differences");
    add(differences, settled.slaps(), SettledJson::slapNode);
    add(differences, settled.spans(), MarksJson::write);
    return node.set("settled", MarksJson.write(settled.reading()));
  }

  private static ObjectNode pair(ReadingComparison comparison, Matching.Pair pair) {
    ObjectNode node = JsonText.object();
    RecordForm.figure(node, "aS", comparison.a().slaps().get(pair.a()).timeS());
    RecordForm.figure(node, "bS", comparison.b().slaps().get(pair.b()).timeS());
    RecordForm.figure(node, "differenceS", pair.differenceS());
    node.put("sideAgrees", comparison.sideAgrees(pair));
    node.put("zoneAgrees", comparison.zoneAgrees(pair));
    return node;
  }

  private static ArrayNode slaps(ComparedMarks marks, List<Integer> places) {
    return RecordForm.all(places, place -> slapNode(marks.slaps().get(place)));
  }

  private static ObjectNode slapNode(Slap slap) {
    return RecordForm.of(slap, "timeS kind side zone");
  }

  private static <M> void add(
      ArrayNode list, List<DifferenceState<M>> states, Function<M, ObjectNode> form) {
    for (DifferenceState<M> state : states) {
      Difference<M> difference = state.difference();
      ObjectNode node = list.addObject();
      node.put("id", list.size());
      RecordForm.put(node, difference, "what timeS gapS");
      node.set("a", RecordForm.orNull(difference.a(), form));
      node.set("b", RecordForm.orNull(difference.b(), form));
      Decision<M> decision = state.decision();
      node.put("choice", decision == null ? Decision.Choice.OPEN.code() : decision.choice().code());
      RecordForm.put(node, decision, "by at why");
    }
  }
}
