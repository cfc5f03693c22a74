package club.emberwell.talk;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * What an entry is about, each part optional. As written: any spelling of a material; as stored:
 * slugs and codes.
 *
 * @param controllerVersion e.g. {@code 4.2}
 */
public record Ties(
    String material,
    String coating,
    String source,
    String process,
    String machineModel,
    String controllerVersion,
    UUID report) {
  public static final Ties NONE = new Ties(null, null, null, null, null, null, null);

  @JsonIgnore
  public boolean isEmpty() {
    return report == null
        && Stream.of(material, coating, source, process, machineModel, controllerVersion)
            .allMatch(part -> part == null);
  }
}
