package club.emberwell.report;

import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.Immutable;

/** One state a report was in; rows are only added. */
@Entity
@Immutable
@Table(name = "report_revision")
@IdClass(ReportRevisionEntity.Key.class)
class ReportRevisionEntity {
  /** Which version of which report. */
  record Key(UUID reportId, int version) implements Serializable {}

  @Id
  @Column(name = "report_id")
  private UUID reportId;

  @Id private int version;

  @Enumerated(EnumType.STRING)
  private RevisionAction action;

  @Column(name = "editor_id")
  private UUID editorId;

  private Instant at;
  private String reason;

  @Enumerated(EnumType.STRING)
  private ReportState state;

  @Convert(converter = WrittenReportConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenReport written;

  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private String interpreted;

  protected ReportRevisionEntity() {}

  /**
   * @param interpreted what was read, as stored JSON
   */
  ReportRevisionEntity(
      ReportEntity report, RevisionAction action, Cause cause, String interpreted) {
    reportId = report.id();
    version = report.version();
    state = report.state();
    written = report.written();
    this.action = action;
    editorId = cause.editor();
    at = cause.at();
    reason = cause.reason();
    this.interpreted = interpreted;
  }

  /**
   * Who made the revision, when and why.
   *
   * @param editor null = the server itself
   */
  record Cause(UUID editor, Instant at, String reason) {}

  int version() {
    return version;
  }

  Revision toRevision(String editorHandle) {
    return new Revision(version, action, editorId, editorHandle, at, reason, state, written);
  }
}
