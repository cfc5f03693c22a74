package club.emberwell.exchange;

import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.lot.Lots;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.sample.Samples;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Gives invented members their grids, samples and lots. What is there already stays as it is. */
@ApplicationScoped
class ScenarioStock {
  private final GridService grids;
  private final Samples samples;
  private final Lots lots;

  ScenarioStock(GridService grids, Samples samples, Lots lots) {
    this.grids = grids;
    this.samples = samples;
    this.lots = lots;
  }

  /**
   * Adds what is missing.
   *
   * @param lines a grid before the samples of it
   * @param people by handle
   * @param benches machines by {@link ScenarioClub#key}
   * @return how many were added
   */
  int load(List<ScenarioStockLine> lines, Map<String, Actor> people, Map<String, UUID> benches) {
    int added = 0;
    for (ScenarioStockLine line : lines) {
      UUID machine = benches.get(ScenarioClub.key(line.by(), line.machine()));
      added += isAdded(people.get(line.by()), line, machine) ? 1 : 0;
    }
    return added;
  }

  private boolean isAdded(Actor owner, ScenarioStockLine line, UUID machine) {
    try {
      return QuarkusTransaction.requiringNew().call(() -> add(owner, line, machine));
    } catch (EntryRefused e) {
      if (e.remarks().stream().anyMatch(remark -> remark.is(RemarkId.ID_TAKEN))) {
        return false; // its owner changed it since
      }
      throw e;
    }
  }

  private boolean add(Actor owner, ScenarioStockLine line, UUID machine) {
    if (line.sample() != null) {
      return samples.add(owner, line.samplePosting()).created();
    }
    if (line.lot() != null) {
      return lots.add(owner, line.lotPosting()).created();
    }
    GridService.Saved saved = grids.save(owner, line.gridOn(machine));
    Grid grid = saved.grid();
    if (saved.created() && line.report() != null) {
      grids.judged(owner, grid.id(), line.report());
    }
    return saved.created();
  }
}
