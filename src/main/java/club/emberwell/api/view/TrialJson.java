package club.emberwell.api.view;

import club.emberwell.report.TrialSnapshot;
import club.emberwell.report.WrittenTrial;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/** One settings set with its effect, in a grid at its place. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TrialJson(
    Integer row,
    Integer column,
    SettingsJson settings,
    DerivedJson derived,
    String effect,
    Integer quality,
    List<String> defects) {
  /**
   * @param written what was typed, null where it is not at hand
   */
  public static TrialJson of(TrialSnapshot trial, WrittenTrial written) {
    return new TrialJson(
        trial.row(),
        trial.column(),
        SettingsJson.of(trial.settings(), written == null ? null : written.settings()),
        DerivedJson.of(trial.derived()),
        trial.effect().code(),
        trial.quality(),
        trial.defects());
  }
}
