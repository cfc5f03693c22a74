package club.emberwell.grid.reading;

import club.emberwell.catalog.Ban;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Settings;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import club.emberwell.report.reading.Work;
import java.util.List;
import java.util.Optional;

/**
 * What was read from a written grid. Where a remark is an error, fields may be null.
 *
 * @param name null where it has none
 * @param base the settings that were said to stay
 */
public record GridReading(
    String name,
    Laser laser,
    Work work,
    Settings base,
    Wish wish,
    Piece piece,
    Timing timing,
    Noticed noticed) {

  /**
   * What was noticed on the way.
   *
   * @param ban present where the work takes no settings
   */
  public record Noticed(Optional<Ban> ban, List<Remark> remarks) {
    public Noticed {
      remarks = List.copyOf(remarks);
    }
  }

  public boolean readable() {
    return Remarks.errors(noticed.remarks()).isEmpty();
  }
}
