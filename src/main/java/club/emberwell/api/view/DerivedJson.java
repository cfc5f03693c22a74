package club.emberwell.api.view;

import club.emberwell.laser.Derived;
import club.emberwell.quantity.Dimension;
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
        QuantityJson.of(Dimension.POWER, d.averagePowerW()),
        QuantityJson.of(Dimension.AREAL_DOSE, d.arealDose()),
        QuantityJson.of(Dimension.LINE_DOSE, d.lineDose()),
        QuantityJson.of(Dimension.PULSE_ENERGY, d.pulseEnergyMj()),
        QuantityJson.of(Dimension.PEAK_POWER, d.peakPowerKw()),
        QuantityJson.of(Dimension.FLUENCE, d.peakFluence()),
        QuantityJson.of("um", d.pulsePitchUm()),
        QuantityJson.number(d.pulseOverlap()),
        QuantityJson.number(d.pulsesPerSpot()),
        QuantityJson.number(d.pulsesPerArea()),
        QuantityJson.number(d.lineOverlap()));
  }
}
