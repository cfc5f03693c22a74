package club.emberwell.api.view;

import club.emberwell.laser.Effect;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenTrial;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One trial of a grid at its place. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TrialJson(
    @Nullable Integer row, @Nullable Integer column, @JsonUnwrapped Tried tried) {

  /** One settings set with its effect. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Tried(
      SettingsJson settings,
      DerivedJson derived,
      Effect effect,
      @Nullable Integer quality,
      List<String> defects) {
    /**
     * @param written what was typed, null where it is not at hand
     */
    static Tried of(TrialSnapshot trial, WrittenTrial written) {
      return new Tried(
          SettingsJson.of(trial.settings(), written == null ? null : written.settings()),
          DerivedJson.of(trial.derived()),
          trial.effect(),
          trial.quality(),
          trial.defects());
    }
  }

  static TrialJson of(TrialSnapshot trial, WrittenTrial written) {
    return new TrialJson(trial.row(), trial.column(), Tried.of(trial, written));
  }
}
