package club.emberwell.bench;

import club.emberwell.quantity.NumberStyle;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** The row of a machine. */
@Entity
@Table(name = "machine")
public class MachineEntity {
  @Id private UUID id;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Long number;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  private String name;

  private String model;

  @Embedded private LaserColumns laser;

  @Column(name = "pulse_control")
  private PulseControl pulseControl;

  @Column(name = "controller_version")
  private String controllerVersion;

  private Housing housing;

  @Column(name = "divergence_mrad")
  private Double divergenceMrad;

  @Convert(converter = WrittenMachineConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenMachine written;

  @Column(name = "number_style")
  private NumberStyle numberStyle;

  private int version;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "updated_at")
  private Instant updatedAt;

  @Column(name = "deleted_at")
  private Instant deletedAt;

  protected MachineEntity() {}

  MachineEntity(UUID id, UUID memberId, Instant now) {
    this.id = id;
    this.memberId = memberId;
    this.createdAt = now.truncatedTo(ChronoUnit.MICROS);
  }

  void take(WrittenMachine from, NumberStyle style, MachineReader.Values values, Instant now) {
    written = from;
    numberStyle = style;
    name = values.name();
    model = values.model();
    laser = LaserColumns.of(values.laser());
    pulseControl = values.pulseControl();
    controllerVersion = values.controllerVersion();
    housing = values.housing();
    divergenceMrad = values.divergenceMrad();
    updatedAt = now.truncatedTo(ChronoUnit.MICROS);
    version++;
  }

  /** As it stood in a file of its owner's. */
  void stood(Machine.Standing then) {
    version = then.version();
    deletedAt = then.deletedAt();
  }

  void delete(Instant now) {
    deletedAt = now;
    updatedAt = now.truncatedTo(ChronoUnit.MICROS);
    version++;
  }

  UUID memberId() {
    return memberId;
  }

  int version() {
    return version;
  }

  boolean deleted() {
    return deletedAt != null;
  }

  Machine toMachine() {
    return new Machine(
        new Machine.Standing(id, number, memberId, version, createdAt, updatedAt, deletedAt),
        new MachineReader.Values(
            name, model, laser.toLaser(), pulseControl, controllerVersion, housing, divergenceMrad),
        written,
        numberStyle);
  }
}
