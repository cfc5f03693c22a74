package club.emberwell.api.view;

import club.emberwell.entry.EntryState;
import club.emberwell.laser.Process;
import club.emberwell.member.Licence;
import club.emberwell.report.TriedByOthers;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A report.
 *
 * @param tried of a report of one trial: what was tried; left out of a grid
 * @param trials of a grid, else left out
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReportJson(
    @JsonUnwrapped Standing standing,
    @JsonUnwrapped Times times,
    @JsonUnwrapped Maker maker,
    @JsonUnwrapped WorkJson work,
    @JsonUnwrapped TrialJson.@Nullable Tried tried,
    @Nullable List<TrialJson> trials,
    @JsonUnwrapped Beside beside) {

  /**
   * Which report in which state, and where it comes from.
   *
   * @param licence SPDX id: under which it may be used, as its author chose
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Standing(
      UUID id,
      int version,
      EntryState state,
      Licence licence,
      @Nullable String origin,
      @Nullable UUID repeatOf) {}

  /** Who made it with what. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Maker(MemberJson member, @Nullable UsedMachine machine, LaserJson laser) {}

  /** The author's machine. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record UsedMachine(UUID id, String name, @Nullable String model) {}

  /**
   * What was done to what, each property by its code.
   *
   * @param cautionCodes ids of its cautions from special care on, the heaviest first; what they say
   *     stands with what is read by itself and on the hazard card of its material
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record WorkJson(
      Process process, List<String> cautionCodes, @JsonIgnore Map<String, Object> values) {
    /** Among the fields of the report. */
    @JsonAnyGetter
    public Map<String, Object> byCode() {
      return values;
    }
  }

  /**
   * What is shown with it.
   *
   * @param photos all of them, the first one first; left out in lists
   * @param photo in lists: the first of them; left out where there is none
   * @param commentCount how many comments stand under it; left out in copies, which a comment does
   *     not change
   * @param triedByOthers left out in lists
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Beside(
      @Nullable List<PhotoJson> photos,
      @Nullable Integer photoCount,
      @Nullable PhotoJson photo,
      @Nullable Integer commentCount,
      @Nullable TriedByOthers triedByOthers,
      @Nullable List<CautionJson> cautions,
      @JsonUnwrapped @Nullable Noticed noticed) {}
}
