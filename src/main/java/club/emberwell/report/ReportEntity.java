package club.emberwell.report;

import club.emberwell.bench.LaserColumns;
import club.emberwell.laser.Process;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** The row of a report: as written, and as read from that. */
@Entity
@Table(name = "report")
class ReportEntity {
  /** Id of the remark that the same author posted the same words before. */
  static final RemarkId SAME_AS_BEFORE = RemarkId.SAME_AS_BEFORE;

  @Id private UUID id;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Long number;

  private int version;

  @Enumerated(EnumType.STRING)
  private ReportState state;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  private String origin;

  @Column(name = "origin_version")
  private Integer originVersion;

  @Convert(converter = WrittenReportConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenReport written;

  @Column(name = "written_hash")
  private String writtenHash;

  @Enumerated(EnumType.STRING)
  @Column(name = "number_style")
  private NumberStyle numberStyle;

  @Column(name = "interpreter_version")
  private int interpreterVersion;

  @Convert(converter = RemarksConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private List<Remark> remarks;

  @Column(name = "machine_id")
  private UUID machineId;

  @Embedded private LaserColumns laser;

  private String material;

  @Column(name = "material_written")
  private String materialWritten;

  private String coating;

  @Column(name = "coating_written")
  private String coatingWritten;

  private String colour;

  @Column(name = "colour_written")
  private String colourWritten;

  @Enumerated(EnumType.STRING)
  private Process process;

  @Column(name = "thickness_mm")
  private Double thicknessMm;

  private String lot;

  @Column(name = "controller_version")
  private String controllerVersion;

  private String notes;

  @Column(name = "repeat_of")
  private UUID repeatOf;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "updated_at")
  private Instant updatedAt;

  protected ReportEntity() {}

  ReportEntity(UUID id, UUID memberId, Origin origin, Instant createdAt) {
    this.id = id;
    this.memberId = memberId;
    this.origin = origin.address();
    this.originVersion = origin.version();
    this.createdAt = stored(createdAt);
  }

  /** Takes an entry with what was read from it; the version goes up by one. */
  void take(WrittenReport from, NumberStyle style, Interpretation read, Instant now) {
    written = from;
    writtenHash = WrittenHash.of(from);
    numberStyle = style;
    interpreterVersion = ReportInterpreter.VERSION;
    remarks = read.remarks();
    machineId = read.machineId();
    laser = LaserColumns.of(read.laser());
    take(read.work());
    lot = read.particulars().lot();
    controllerVersion = read.particulars().controllerVersion();
    notes = read.particulars().notes();
    repeatOf = read.repeatOf();
    touch(now);
  }

  private void take(Work work) {
    material = work.material().slug();
    materialWritten = work.material().written();
    coating = work.coating().slug();
    coatingWritten = work.coating().written();
    colour = work.colour().slug();
    colourWritten = work.colour().written();
    process = work.process();
    thicknessMm = work.thicknessMm();
  }

  private Work work() {
    return new Work(
        process,
        new Filed(material, materialWritten),
        new Filed(coating, coatingWritten),
        new Filed(colour, colourWritten),
        thicknessMm);
  }

  private Particulars particulars() {
    return new Particulars(notes, lot, controllerVersion);
  }

  void enter(ReportState next, Instant now) {
    state = next;
    touch(now);
  }

  void touch(Instant now) {
    updatedAt = stored(now);
    version++;
  }

  // The database keeps microseconds; what is answered now must equal what is read later.
  private static Instant stored(Instant time) {
    return time.truncatedTo(ChronoUnit.MICROS);
  }

  /** The first state is set without counting as a change. */
  void begin(ReportState first) {
    state = first;
  }

  /** Read again by this interpreter with the same result. */
  void stillRead() {
    interpreterVersion = ReportInterpreter.VERSION;
  }

  UUID id() {
    return id;
  }

  int version() {
    return version;
  }

  ReportState state() {
    return state;
  }

  UUID memberId() {
    return memberId;
  }

  Origin origin() {
    return new Origin(origin, originVersion);
  }

  WrittenReport written() {
    return written;
  }

  String writtenHash() {
    return writtenHash;
  }

  NumberStyle numberStyle() {
    return numberStyle;
  }

  List<Remark> remarks() {
    return remarks;
  }

  UUID machineId() {
    return machineId;
  }

  Instant updatedAt() {
    return updatedAt;
  }

  LaserColumns laser() {
    return laser;
  }

  /** Remarks of a new reading, beside those that only the moment of posting could know. */
  List<Remark> remarksWith(List<Remark> read) {
    return Stream.concat(read.stream(), remarks.stream().filter(r -> r.is(SAME_AS_BEFORE)))
        .toList();
  }

  /** What is stored, as the interpreter would have answered it. */
  Interpretation interpretation(List<TrialSnapshot> trials) {
    return new Interpretation(
        machineId,
        laser.toLaser(),
        work(),
        particulars(),
        repeatOf,
        trials,
        Optional.empty(),
        remarks);
  }

  ReportSnapshot toSnapshot(ReportNames names, List<TrialSnapshot> trials) {
    return new ReportSnapshot(
        new ReportSnapshot.Standing(id, number, version, state, createdAt, updatedAt),
        new ReportSnapshot.Author(memberId, names.memberNumber(), names.memberHandle()),
        new ReportSnapshot.Burner(
            machineId,
            names.machineNumber() == null ? 0 : names.machineNumber(),
            names.machineName(),
            laser.toLaser()),
        work(),
        trials,
        particulars(),
        repeatOf,
        Math.toIntExact(names.photos()));
  }
}
