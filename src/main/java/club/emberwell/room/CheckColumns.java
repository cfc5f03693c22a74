package club.emberwell.room;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.time.LocalDate;

/** A check of a room as columns, for what is told by itself. */
@Embeddable
class CheckColumns {
  private String code;

  @Column(name = "every_days")
  private Integer everyDays;

  @Column(name = "last_on")
  private LocalDate lastOn;

  protected CheckColumns() {}

  static CheckColumns of(CheckState state) {
    CheckColumns columns = new CheckColumns();
    columns.code = state.check().code();
    columns.everyDays = state.everyDays();
    columns.lastOn = state.lastOn();
    return columns;
  }
}
