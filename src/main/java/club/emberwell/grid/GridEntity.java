package club.emberwell.grid;

import club.emberwell.bench.LaserColumns;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;

/** What a test grid has of its own. */
@Entity
@Table(name = "grid")
class GridEntity extends EntryPart {
  @Convert(converter = WrittenGridConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenGrid written;

  @Column(name = "asked_hash", updatable = false)
  private String askedHash;

  @Column(name = "number_style")
  private NumberStyle numberStyle;

  @Column(name = "machine_id")
  private UUID machineId;

  @Embedded private LaserColumns laser;

  @Column(name = "report_id")
  private UUID reportId;

  protected GridEntity() {}

  /**
   * @param asked hash of the words it came in with, before its axes had their values
   */
  GridEntity(EntryEntity entry, String asked) {
    super(entry);
    askedHash = asked;
  }

  /**
   * Takes a grid whose axes have their values.
   *
   * @param with the laser it is planned for
   */
  final void take(WrittenGrid from, NumberStyle style, Laser with) {
    written = from;
    numberStyle = style;
    machineId = from.machine();
    laser = LaserColumns.of(with);
  }

  void judged(UUID report) {
    reportId = report;
  }

  UUID reportId() {
    return reportId;
  }

  String askedHash() {
    return askedHash;
  }

  NumberStyle numberStyle() {
    return numberStyle;
  }

  WrittenGrid written() {
    return written;
  }

  Laser laser() {
    return laser.toLaser();
  }

  UUID machineId() {
    return machineId;
  }

  Grid toGrid(String handle) {
    return new Grid(entry().toEntry(handle), written, numberStyle, laser.toLaser(), reportId);
  }
}
