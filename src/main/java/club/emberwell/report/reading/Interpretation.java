package club.emberwell.report.reading;

import club.emberwell.catalog.Ban;
import club.emberwell.laser.Laser;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What was read from an entry. Where a remark is an error, fields may be null and nothing may be
 * stored.
 *
 * @param ban present where the work takes no settings
 */
public record Interpretation(
    UUID machineId,
    Laser laser,
    @JsonUnwrapped Work work,
    UUID repeatOf,
    List<TrialSnapshot> trials,
    @JsonIgnore Optional<Ban> ban,
    List<Remark> remarks) {
  public Interpretation {
    trials = List.copyOf(trials);
    remarks = List.copyOf(remarks);
  }

  public boolean readable() {
    return errors().isEmpty();
  }

  public List<Remark> errors() {
    return Remarks.errors(remarks);
  }

  /** Implausible values whose pointers the author did not confirm. */
  public List<Remark> unconfirmed(List<String> confirmed) {
    return Remarks.unconfirmed(remarks, confirmed);
  }

  /** Equal but for a ban, which is no part of a stored report. */
  public boolean sameAs(Interpretation other) {
    return withBan(other.ban).equals(other);
  }

  private Interpretation withBan(Optional<Ban> other) {
    return copy(other, remarks);
  }

  public Interpretation withRemarks(List<Remark> others) {
    return copy(ban, others);
  }

  private Interpretation copy(Optional<Ban> otherBan, List<Remark> otherRemarks) {
    return new Interpretation(machineId, laser, work, repeatOf, trials, otherBan, otherRemarks);
  }
}
