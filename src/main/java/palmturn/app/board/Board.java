package palmturn.app.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.advise.AthleteNotice;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** The trials of a session, filmed or still to be filmed, and the chosen one. */
public final class Board {
  private final ReadOnlyObjectWrapper<List<Cell>> cells = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable TrialId> chosen = new ReadOnlyObjectWrapper<>();

  private final ReadOnlyObjectWrapper<Map<TrialId, ClipPreview>> previews =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyObjectWrapper<List<AthleteNotice>> heed =
      new ReadOnlyObjectWrapper<>(List.of());
  private Map<String, String> headings = Map.of();

  /** All cells: blocks in order, then repeats, left before right. */
  public ReadOnlyObjectProperty<List<Cell>> cellsProperty() {
    return cells.getReadOnlyProperty();
  }

  /** The chosen trial. */
  public ReadOnlyObjectProperty<@Nullable TrialId> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** Previews of the clips that have been read so far. */
  public ReadOnlyObjectProperty<Map<TrialId, ClipPreview>> previewsProperty() {
    return previews.getReadOnlyProperty();
  }

  /** Cautions about the athlete. */
  public ReadOnlyObjectProperty<List<AthleteNotice>> heedProperty() {
    return heed.getReadOnlyProperty();
  }

  /** Sets the cautions about the athlete. */
  public void heed(List<AthleteNotice> all) {
    heed.set(List.copyOf(all));
  }

  /** Returns the heading of a block: the baseline, or the drill that it follows. */
  public String heading(String block) {
    return headings.getOrDefault(block, block);
  }

  /** Returns the trial to film next; null when nothing is missing. */
  public @Nullable TrialId nextToFilm() {
    return FilmingOrder.firstMissing(cells.get());
  }

  /** Sets the preview of a trial's clip. */
  public void setPreview(TrialId id, ClipPreview about) {
    Map<TrialId, ClipPreview> more = new HashMap<>(previews.get());
    more.put(id, about);
    previews.set(Map.copyOf(more));
  }

  /** Removes all previews, for another session. */
  public void clearPreviews() {
    previews.set(Map.of());
  }

  /**
   * Sets the trials; those not filmed yet are filled in.
   *
   * @param blocks the session's blocks
   * @param filmed a cell for every trial
   */
  public void setTrials(List<Block> blocks, List<Cell> filmed) {
    List<Cell> all = new ArrayList<>();
    Map<String, String> names = new HashMap<>();
    blocks.forEach(block -> names.put(block.name(), heading(block)));
    headings = Map.copyOf(names);
    List<String> inOrder =
        blocks.stream()
            .map(Block::name)
            .distinct()
            .sorted(Comparator.comparingInt(Block::order))
            .toList();
    for (String block : inOrder) {
      TreeSet<Integer> repeats =
          filmed.stream()
              .map(Cell::id)
              .filter(id -> id.block().equals(block))
              .map(TrialId::repeat)
              .collect(Collectors.toCollection(TreeSet::new));
      for (int repeat = 1; repeat <= FilmingOrder.REPEATS; repeat++) {
        repeats.add(repeat);
      }
      for (int repeat : repeats) {
        for (Hand hand : Hand.values()) {
          TrialId id = new TrialId(hand, block, repeat);
          all.add(find(filmed, id).orElseGet(() -> Cell.notFilmed(id)));
        }
      }
    }
    cells.set(List.copyOf(all));
    if (chosen.get() == null || find(all, chosen.get()).isEmpty()) {
      choose(first(all));
    }
  }

  /** Replaces one trial's cell. */
  public void update(Cell cell) {
    List<Cell> all = new ArrayList<>(cells.get());
    all.replaceAll(each -> each.id().equals(cell.id()) ? cell : each);
    cells.set(List.copyOf(all));
  }

  /** Chooses a trial. */
  public void choose(@Nullable TrialId id) {
    chosen.set(id);
  }

  /** Goes to the neighbour across or down, staying on the board. */
  public void move(int across, int down) {
    List<Cell> all = cells.get();
    TrialId from = chosen.get();
    if (from == null) {
      return;
    }
    int at = all.indexOf(find(all, from).orElseThrow());
    int hands = Hand.values().length;
    int column = Math.max(0, Math.min(hands - 1, at % hands + across));
    int row = Math.max(0, Math.min(all.size() / hands - 1, at / hands + down));
    choose(all.get(row * hands + column).id());
  }

  /** Returns the chosen cell. */
  public Optional<Cell> chosenCell() {
    TrialId id = chosen.get();
    return id == null ? Optional.empty() : find(cells.get(), id);
  }

  private static String heading(Block block) {
    if (block.name().equals(Block.BASELINE)) {
      return "Baseline";
    }
    Drill drill = block.drill();
    return "After "
        + (drill == null ? "drill " + Block.order(block.name()) : drill.code().replace('-', ' '));
  }

  private static Optional<Cell> find(List<Cell> all, TrialId id) {
    return all.stream().filter(cell -> cell.id().equals(id)).findFirst();
  }

  private static @Nullable TrialId first(List<Cell> all) {
    return all.stream()
        .filter(cell -> cell.state() != Cell.State.NOT_FILMED)
        .findFirst()
        .map(Cell::id)
        .orElse(FilmingOrder.firstMissing(all));
  }
}
