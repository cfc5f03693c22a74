package club.emberwell.api.view;

import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a range is about: trials of different keys are never mixed.
 *
 * @param wavelength to 1 %, where it lies in none of the bands
 * @param label in words
 * @param work the values that count for this process, as the search's filters have them: {@code
 *     not-given} where nobody stated one
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "RangeOf")
public record KeyJson(
    Process process,
    @Nullable WavelengthBand band,
    @Nullable QuantityJson wavelength,
    Regime regime,
    String label,
    @JsonAnyGetter @Schema(hidden = true) Map<String, String> work) {

  public static KeyJson of(RangeKey key) {
    Map<String, String> work = new LinkedHashMap<>();
    key.work().parts().forEach((facet, part) -> work.put(facet.code(), part.value()));
    return new KeyJson(
        key.process(),
        key.band(),
        key.light().nm() == 0
            ? null
            : QuantityJson.of(QuantityKind.WAVELENGTH, Double.valueOf(key.light().nm())),
        key.regime(),
        key.words(),
        work);
  }
}
