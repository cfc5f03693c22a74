package club.emberwell.api.view;

import club.emberwell.laser.Derived;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;

/**
 * What follows from a laser and its settings; all nominal. Overlaps and counts are bare numbers.
 *
 * @param basis always {@code nominal}: rated power, set speed, beam diameter at focus
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DerivedJson(
    String basis,
    QuantityJson averagePower,
    QuantityJson arealDose,
    QuantityJson lineDose,
    QuantityJson pulseEnergy,
    QuantityJson peakPower,
    QuantityJson peakFluence,
    QuantityJson pulsePitch,
    BigDecimal pulseOverlap,
    BigDecimal pulsesPerSpot,
    BigDecimal pulsesPerArea,
    BigDecimal lineOverlap) {
  public static DerivedJson of(Derived d) {
    return new DerivedJson(
        "nominal",
        QuantityJson.of(QuantityKind.POWER, d.averagePowerW()),
        QuantityJson.of(QuantityKind.AREAL_DOSE, d.arealDose()),
        QuantityJson.of(QuantityKind.LINE_DOSE, d.lineDose()),
        QuantityJson.of(QuantityKind.PULSE_ENERGY, d.pulseEnergyMj()),
        QuantityJson.of(QuantityKind.PEAK_POWER, d.peakPowerKw()),
        QuantityJson.of(QuantityKind.FLUENCE, d.peakFluence()),
        QuantityJson.of("um", d.pulsePitchUm()),
        QuantityJson.number(d.pulseOverlap()),
        QuantityJson.number(d.pulsesPerSpot()),
        QuantityJson.number(d.pulsesPerArea()),
        QuantityJson.number(d.lineOverlap()));
  }
}
