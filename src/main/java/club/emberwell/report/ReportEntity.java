package club.emberwell.report;

import club.emberwell.bench.LaserColumns;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.Words;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.Particulars;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WrittenHash;
import club.emberwell.report.reading.WrittenReport;
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
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.annotations.ColumnTransformer;

/** The row of a report: as written, and as read from that. */
@Entity
@Table(name = "report")
class ReportEntity {
  /** Id of the remark that the same author posted the same words before. */
  static final RemarkId SAME_AS_BEFORE = RemarkId.SAME_AS_BEFORE;

  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  @Convert(converter = WrittenReportConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenReport written;

  @Column(name = "written_hash")
  private String writtenHash;

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

  private Process process;

  @Column(name = "thickness_mm")
  private Double thicknessMm;

  private String lot;

  @Column(name = "controller_version")
  private String controllerVersion;

  private String notes;

  @Column(name = "repeat_of")
  private UUID repeatOf;

  protected ReportEntity() {}

  ReportEntity(EntryEntity entry) {
    this.entry = entry;
  }

  /** Takes an entry with what was read from it. */
  void take(WrittenReport from, NumberStyle style, Interpretation read) {
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

  private List<TrialSnapshot> read(List<TrialEntity> trials) {
    Laser used = laser.toLaser();
    return trials.stream().map(trial -> trial.toSnapshot(used, process)).toList();
  }

  private Particulars particulars() {
    return new Particulars(notes, lot, controllerVersion);
  }

  /** What lists call a report and its history keeps. */
  static Words words(WrittenReport written, Interpretation read) {
    String title =
        Stream.of(read.work().material(), read.work().coating(), read.work().colour())
            .map(Filed::written)
            .filter(Objects::nonNull)
            .collect(Collectors.joining(", "));
    return new Words(title, StoredJson.write(written), StoredJson.write(read));
  }

  /** Read again by this interpreter with the same result. */
  void stillRead() {
    interpreterVersion = ReportInterpreter.VERSION;
  }

  UUID id() {
    return id;
  }

  EntryEntity entry() {
    return entry;
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

  LaserColumns laser() {
    return laser;
  }

  /** Remarks of a new reading, beside those that only the moment of posting could know. */
  List<Remark> remarksWith(List<Remark> read) {
    return Stream.concat(read.stream(), remarks.stream().filter(r -> r.is(SAME_AS_BEFORE)))
        .toList();
  }

  /** What is stored, as the interpreter would have answered it. */
  Interpretation interpretation(List<TrialEntity> trials) {
    return new Interpretation(
        machineId,
        laser.toLaser(),
        work(),
        particulars(),
        repeatOf,
        read(trials),
        Optional.empty(),
        remarks);
  }

  ReportSnapshot toSnapshot(ReportNames names, List<TrialEntity> trials) {
    return snapshot(names, read(trials));
  }

  /** The same where its trials were just read. */
  ReportSnapshot snapshot(ReportNames names, List<TrialSnapshot> trials) {
    return new ReportSnapshot(
        new ReportSnapshot.Standing(
            entry.id(),
            entry.number(),
            entry.version(),
            entry.state(),
            entry.createdAt(),
            entry.updatedAt()),
        new ReportSnapshot.Author(entry.memberId(), names.memberNumber(), names.memberHandle()),
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
