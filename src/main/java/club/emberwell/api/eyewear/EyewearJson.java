package club.emberwell.api.eyewear;

import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.eyewear.Glasses;
import club.emberwell.eyewear.WrittenGlasses;
import club.emberwell.laser.safety.En207;
import club.emberwell.laser.safety.Protection;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A pair of glasses.
 *
 * @param protections what its marking was read as
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record EyewearJson(
    UUID id,
    int version,
    EntryState state,
    @JsonUnwrapped WrittenGlasses written,
    List<ProtectionJson> protections,
    @JsonUnwrapped Noticed noticed,
    @JsonUnwrapped Times times) {
  /**
   * What is claimed for some wavelengths.
   *
   * @param opticalDensity as printed; left out where a scale number is
   * @param conditions the letters of the scale number; empty beside an optical density
   * @param scaleNumber n of LBn
   * @param sentence for people
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ProtectionJson(
      QuantityJson from,
      QuantityJson to,
      @Nullable BigDecimal opticalDensity,
      List<En207.Condition> conditions,
      @Nullable Integer scaleNumber,
      String sentence) {
    static ProtectionJson of(Protection one) {
      return new ProtectionJson(
          QuantityJson.of(QuantityKind.WAVELENGTH, one.fromNm()),
          QuantityJson.of(QuantityKind.WAVELENGTH, one.toNm()),
          QuantityJson.number(one.opticalDensity()),
          List.copyOf(new TreeSet<>(one.conditions())),
          one.scaleNumber(),
          one.sentence(NumberStyle.ANY));
    }
  }

  static EyewearJson of(Glasses glasses) {
    Entry.Times at = glasses.entry().times();
    return new EyewearJson(
        glasses.id(),
        glasses.version(),
        glasses.entry().state(),
        glasses.written(),
        glasses.printed().stream().map(ProtectionJson::of).toList(),
        Noticed.of(glasses.remarks()),
        new Times(at.created(), at.updated()));
  }
}
