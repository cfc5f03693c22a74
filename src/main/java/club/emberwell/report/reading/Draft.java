package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.Ban;
import club.emberwell.catalog.Catalog;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the steps of an interpretation fill in, one after the other. */
final class Draft {
  final WrittenReport written;
  final Laser machine;
  final Catalog catalog;
  final FieldReader in;

  Laser laser;
  Work work;
  Optional<Ban> ban = Optional.empty();
  final List<TrialSnapshot> trials = new ArrayList<>();

  /**
   * @param machine laser of the machine named in the entry, null where there is none such
   */
  Draft(WrittenReport written, Laser machine, Catalog catalog, NumberStyle style) {
    this.written = written;
    this.machine = machine;
    this.catalog = catalog;
    this.in = new FieldReader(style);
  }

  Interpretation done() {
    return new Interpretation(
        written.machine(),
        laser,
        work,
        written.repeatOf(),
        trials,
        ban,
        in.remarks().stream().map(remark -> PossibleReadings.on(laser, remark)).toList());
  }
}
