package club.emberwell.report;

import club.emberwell.bench.LaserColumns;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import club.emberwell.entry.Words;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenHash;
import club.emberwell.report.reading.WrittenReport;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.hibernate.annotations.ColumnTransformer;

/** The row of a report: as written, and as read from that. */
@Entity
@Table(name = "report")
class ReportEntity extends EntryPart {
  /** Id of the remark that the same author posted the same words before. */
  static final RemarkId SAME_AS_BEFORE = RemarkId.SAME_AS_BEFORE;

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

  @Embedded private WorkColumns work;

  @Column(name = "repeat_of")
  private UUID repeatOf;

  protected ReportEntity() {}

  ReportEntity(EntryEntity entry) {
    super(entry);
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
    work = WorkColumns.of(read.work());
    repeatOf = read.repeatOf();
  }

  private List<TrialSnapshot> read(List<TrialEntity> trials) {
    Laser used = laser.toLaser();
    return trials.stream().map(trial -> trial.toSnapshot(used, work.process())).toList();
  }

  /** What lists call a report and its history keeps. */
  static Words words(WrittenReport written, Interpretation read) {
    return new Words(read.work().called(), StoredJson.write(written), StoredJson.write(read));
  }

  /** Read again by this interpreter with the same result. */
  void stillRead() {
    interpreterVersion = ReportInterpreter.VERSION;
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
        work.toWork(),
        repeatOf,
        read(trials),
        Optional.empty(),
        remarks);
  }

  /**
   * @param first of its photos, or null
   */
  ReportSnapshot toSnapshot(ReportNames names, List<TrialEntity> trials, Photo first) {
    return snapshot(names, read(trials), first);
  }

  /** The same where its trials were just read. */
  ReportSnapshot snapshot(ReportNames names, List<TrialSnapshot> trials, Photo first) {
    return new ReportSnapshot(
        new ReportSnapshot.Standing(
            entry().id(),
            entry().number(),
            entry().version(),
            entry().state(),
            entry().licence(),
            entry().createdAt(),
            entry().updatedAt()),
        new ReportSnapshot.Author(entry().memberId(), names.memberNumber(), names.memberHandle()),
        new ReportSnapshot.Burner(
            machineId,
            names.machineNumber() == null ? 0 : names.machineNumber(),
            names.machineName(),
            names.machineModel(),
            laser.toLaser()),
        work.toWork(),
        trials,
        repeatOf,
        new ReportSnapshot.Beside(
            Math.toIntExact(names.photos()), first, Math.toIntExact(names.comments())));
  }
}
