package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
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
    ObjectNode node = JsonText.object();
    node.put("trial", trial.id().name());
    node.put("a", comparison.a().name());
    node.put("b", comparison.b().name());
    node.put("independent", comparison.a().independent() && comparison.b().independent());
    Put.figure(node, "toleranceS", comparison.tolerance().seconds());
    node.put("tooFewFrames", comparison.tolerance().tooFewFrames());
    Put.figure(node, "offsetRemovedS", comparison.removedS());
    ArrayNode matched = node.putArray("matched");
    comparison.matching().pairs().forEach(pair -> matched.add(pair(comparison, pair)));
    ArrayNode onlyA = node.putArray("onlyA");
    comparison.matching().onlyA().forEach(i -> onlyA.add(slapNode(comparison.a().slaps().get(i))));
    ArrayNode onlyB = node.putArray("onlyB");
    comparison.matching().onlyB().forEach(j -> onlyB.add(slapNode(comparison.b().slaps().get(j))));
    node.put("open", settled.open());
    node.put("decided", settled.decided());
    node.put("stale", settled.stale());
    ArrayNode differences = node.putArray("differences");
    add(differences, settled.slaps(), SettledJson::slapNode);
    add(differences, settled.spans(), MarksJson::write);
    node.set("settled", MarksJson.write(settled.reading()));
    return node;
  }

  private static ObjectNode pair(ReadingComparison comparison, Matching.Pair pair) {
    ObjectNode node = JsonText.object();
    Put.figure(node, "aS", comparison.a().slaps().get(pair.a()).timeS());
    Put.figure(node, "bS", comparison.b().slaps().get(pair.b()).timeS());
    Put.figure(node, "differenceS", pair.differenceS());
    node.put("sideAgrees", comparison.sideAgrees(pair));
    node.put("zoneAgrees", comparison.zoneAgrees(pair));
    return node;
  }

  private static ObjectNode slapNode(Slap slap) {
    return RecordForm.of(slap, "timeS kind side zone");
  }

  private static <M> void add(
      ArrayNode list, List<DifferenceState<M>> rulings, Function<M, ObjectNode> form) {
    for (DifferenceState<M> ruling : rulings) {
      Difference<M> difference = ruling.difference();
      ObjectNode node = list.addObject();
      node.put("id", list.size());
      ArrayNode what = node.putArray("what");
      difference.what().forEach(each -> what.add(each.code()));
      Put.figure(node, "timeS", difference.timeS());
      Put.figure(node, "gapS", difference.gapS());
      node.set("a", orNull(difference.a(), form));
      node.set("b", orNull(difference.b(), form));
      Decision<M> decision = ruling.decision();
      node.put("choice", decision == null ? Decision.Choice.OPEN.code() : decision.choice().code());
      node.put("by", decision == null ? null : decision.by());
      node.put("at", decision == null ? null : decision.at().toString());
      node.put("why", decision == null ? null : decision.why());
    }
  }

  private static <M> @Nullable ObjectNode orNull(@Nullable M mark, Function<M, ObjectNode> form) {
    return mark == null ? null : form.apply(mark);
  }
}
