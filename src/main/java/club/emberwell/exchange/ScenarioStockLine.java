package club.emberwell.exchange;

import club.emberwell.grid.GridPosting;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.lot.LotPosting;
import club.emberwell.lot.WrittenLot;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.sample.SamplePosting;
import club.emberwell.sample.WrittenSample;
import java.time.Instant;
import java.util.UUID;

/**
 * One line of {@code stock.jsonl}: a grid, a sample or a lot in the shape of the API with who and
 * when; exactly one of the three is there.
 *
 * @param machine of a grid: the name of its owner's machine
 * @param report of a grid: the one in which its results stand, or null
 */
record ScenarioStockLine(
    UUID id,
    String by,
    Instant at,
    String machine,
    UUID report,
    WrittenGrid grid,
    WrittenSample sample,
    WrittenLot lot) {
  GridPosting gridOn(UUID machineId) {
    WrittenGrid on =
        new WrittenGrid(
            grid.name(),
            machineId,
            null,
            grid.work(),
            grid.settings(),
            grid.axes(),
            grid.blank(),
            grid.timing());
    return new GridPosting(id, on, NumberStyle.ANY, at);
  }

  SamplePosting samplePosting() {
    return new SamplePosting(id, sample, at);
  }

  LotPosting lotPosting() {
    return new LotPosting(id, lot, at);
  }
}
