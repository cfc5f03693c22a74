package club.emberwell.report;

import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import club.emberwell.report.reading.TrialSnapshot;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** The row of a trial: settings in canonical units; what follows from them is computed. */
@Entity
@Table(name = "trial")
@IdClass(TrialEntity.Key.class)
class TrialEntity {
  /** Which trial of which report. */
  record Key(UUID reportId, int position) implements Serializable {}

  @Id
  @Column(name = "report_id")
  private UUID reportId;

  @Id private int position;

  @Column(name = "grid_row")
  private Integer gridRow;

  @Column(name = "grid_column")
  private Integer gridColumn;

  @Convert(converter = SettingsConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private Settings settings;

  private String effect;

  private Integer quality;

  @JdbcTypeCode(SqlTypes.ARRAY)
  private String[] defects;

  protected TrialEntity() {}

  TrialEntity(UUID reportId, int position, TrialSnapshot trial) {
    this.reportId = reportId;
    this.position = position;
    gridRow = trial.row();
    gridColumn = trial.column();
    effect = trial.effect().code();
    quality = trial.quality();
    defects = trial.defects().toArray(String[]::new);
    settings = trial.settings();
  }

  UUID reportId() {
    return reportId;
  }

  TrialSnapshot toSnapshot(Laser laser, Process process) {
    return new TrialSnapshot(
        gridRow,
        gridColumn,
        settings,
        Dose.derive(laser, process, settings),
        Effect.of(effect).orElseThrow(),
        quality,
        List.of(defects));
  }
}
