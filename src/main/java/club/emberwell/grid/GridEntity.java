package club.emberwell.grid;

import club.emberwell.bench.LaserColumns;
import club.emberwell.entry.EntryEntity;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;

/** What a test grid has of its own. */
@Entity
@Table(name = "grid")
class GridEntity {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

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
    this.entry = entry;
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

  EntryEntity entry() {
    return entry;
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
    return new Grid(entry.toEntry(handle), written, numberStyle, laser.toLaser(), reportId);
  }
}
