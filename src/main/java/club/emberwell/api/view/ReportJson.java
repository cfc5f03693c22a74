package club.emberwell.api.view;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A report: of one trial with its fields on top, of a grid with {@code trials} instead.
 *
 * @param warnings implausible values, by field
 * @param remarks what else was noticed
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReportJson(
    UUID id,
    int version,
    String state,
    Author member,
    UsedMachine machine,
    LaserJson laser,
    WordJson material,
    WordJson coating,
    WordJson colour,
    QuantityJson thickness,
    String process,
    SettingsJson settings,
    DerivedJson derived,
    String effect,
    Integer quality,
    List<String> defects,
    List<TrialJson> trials,
    String notes,
    String lot,
    String controllerVersion,
    UUID repeatOf,
    String origin,
    List<PhotoJson> photos,
    Integer photoCount,
    List<CautionJson> cautions,
    List<RemarkJson> warnings,
    List<RemarkJson> remarks,
    Instant createdAt,
    Instant updatedAt) {

  /** Who posted it. */
  public record Author(UUID id, String handle) {}

  /** The author's machine. */
  public record UsedMachine(UUID id, String name) {}

  /** A picture and where to load it. */
  public record PhotoJson(UUID id, String url, String thumb, int width, int height) {}
}
