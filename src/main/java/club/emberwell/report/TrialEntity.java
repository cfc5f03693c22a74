package club.emberwell.report;

import club.emberwell.laser.Derived;
import club.emberwell.laser.Direction;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Settings;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** The row of a trial: settings and derived values in canonical units. */
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

  @Column(name = "power_percent")
  private Double powerPercent;

  @Column(name = "power_w")
  private Double powerW;

  @Column(name = "speed_mm_s")
  private Double speedMmS;

  @Column(name = "line_spacing_mm")
  private Double lineSpacingMm;

  private Integer passes;

  @Column(name = "repetition_rate_khz")
  private Double repetitionRateKhz;

  @Column(name = "pulse_duration_ns")
  private Double pulseDurationNs;

  @Column(name = "focus_offset_mm")
  private Double focusOffsetMm;

  @Column(name = "air_assist")
  private Boolean airAssist;

  @Enumerated(EnumType.STRING)
  private Direction direction;

  @Column(name = "cross_pass")
  private Boolean crossPass;

  @Column(name = "average_power_w")
  private Double averagePowerW;

  @Column(name = "areal_dose")
  private Double arealDose;

  @Column(name = "line_dose")
  private Double lineDose;

  @Column(name = "pulse_energy_mj")
  private Double pulseEnergyMj;

  @Column(name = "peak_power_kw")
  private Double peakPowerKw;

  @Column(name = "peak_fluence")
  private Double peakFluence;

  @Column(name = "pulse_pitch_um")
  private Double pulsePitchUm;

  @Column(name = "pulse_overlap")
  private Double pulseOverlap;

  @Column(name = "pulses_per_spot")
  private Double pulsesPerSpot;

  @Column(name = "pulses_per_area")
  private Double pulsesPerArea;

  @Column(name = "line_overlap")
  private Double lineOverlap;

  @Enumerated(EnumType.STRING)
  private Effect effect;

  private Integer quality;

  @JdbcTypeCode(SqlTypes.ARRAY)
  private String[] defects;

  protected TrialEntity() {}

  TrialEntity(UUID reportId, int position, TrialSnapshot trial) {
    this.reportId = reportId;
    this.position = position;
    gridRow = trial.row();
    gridColumn = trial.column();
    effect = trial.effect();
    quality = trial.quality();
    defects = trial.defects().toArray(String[]::new);
    take(trial.settings());
    take(trial.derived());
  }

  private void take(Settings settings) {
    powerPercent = settings.powerPercent();
    powerW = settings.powerW();
    speedMmS = settings.speedMmS();
    lineSpacingMm = settings.lineSpacingMm();
    passes = settings.passes();
    repetitionRateKhz = settings.repetitionRateKhz();
    pulseDurationNs = settings.pulseDurationNs();
    focusOffsetMm = settings.focusOffsetMm();
    airAssist = settings.airAssist();
    direction = settings.direction();
    crossPass = settings.crossPass();
  }

  private void take(Derived derived) {
    averagePowerW = derived.averagePowerW();
    arealDose = derived.arealDose();
    lineDose = derived.lineDose();
    pulseEnergyMj = derived.pulseEnergyMj();
    peakPowerKw = derived.peakPowerKw();
    peakFluence = derived.peakFluence();
    pulsePitchUm = derived.pulsePitchUm();
    pulseOverlap = derived.pulseOverlap();
    pulsesPerSpot = derived.pulsesPerSpot();
    pulsesPerArea = derived.pulsesPerArea();
    lineOverlap = derived.lineOverlap();
  }

  UUID reportId() {
    return reportId;
  }

  TrialSnapshot toSnapshot() {
    return new TrialSnapshot(
        gridRow, gridColumn, settings(), derived(), effect, quality, List.of(defects));
  }

  private Settings settings() {
    return new Settings(
        powerPercent,
        powerW,
        speedMmS,
        lineSpacingMm,
        passes,
        repetitionRateKhz,
        pulseDurationNs,
        focusOffsetMm,
        airAssist,
        direction,
        crossPass);
  }

  private Derived derived() {
    return new Derived(
        averagePowerW,
        arealDose,
        lineDose,
        pulseEnergyMj,
        peakPowerKw,
        peakFluence,
        pulsePitchUm,
        pulseOverlap,
        pulsesPerSpot,
        pulsesPerArea,
        lineOverlap);
  }
}
