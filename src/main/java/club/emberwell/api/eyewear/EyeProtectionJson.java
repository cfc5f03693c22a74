package club.emberwell.api.eyewear;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.laser.safety.Coverage.Cover;
import club.emberwell.laser.safety.En207;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.laser.safety.EyeMinima;
import club.emberwell.laser.safety.HazardDistance;
import club.emberwell.laser.safety.Upward;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is calculated for the eyes beside a machine. Needed numbers and distances are rounded up.
 *
 * @param glasses one's own, the worst first
 * @param limit left out where the tables read here give none: then there is no number at all
 * @param scaleNumbers needed at least, as far as the diameter of the beam is known
 * @param closing always true of it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record EyeProtectionJson(
    UUID machine,
    List<FitJson> glasses,
    List<String> warnings,
    @Nullable LimitJson limit,
    @JsonUnwrapped Densities densities,
    List<ScaleJson> scaleNumbers,
    List<ReachJson> distances,
    String closing) {
  /**
   * Optical densities that are needed at least; left out where there is no limit.
   *
   * @param opticalDensity left out too where the laser is pulsed and nobody said how
   * @param averageOpticalDensity for the average power alone
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Densities(
      @Nullable BigDecimal opticalDensity, @Nullable BigDecimal averageOpticalDensity) {
    static Densities of(EyeMinima minima) {
      return new Densities(
          QuantityJson.number(minima.density()),
          minima.average() == null
              ? null
              : QuantityJson.number(Upward.density(minima.average().opticalDensity())));
    }
  }

  /**
   * How a pair stands to it.
   *
   * @param sentence both numbers, or what is missing
   */
  public record FitJson(UUID id, String name, Cover verdict, String sentence) {
    static FitJson of(EyeProtection.Fit fit) {
      return new FitJson(
          fit.glasses().id(),
          fit.glasses().name(),
          fit.coverage().verdict(),
          fit.coverage().because());
    }
  }

  /**
   * The limit of one accidental look.
   *
   * @param duration of it
   * @param aperture over which it is measured
   * @param formula the branch of the table
   */
  public record LimitJson(
      QuantityJson irradiance,
      QuantityJson duration,
      QuantityJson aperture,
      String formula,
      String source,
      List<String> assumptions) {
    static LimitJson of(EyeLimits.Limit limit) {
      return limit == null
          ? null
          : new LimitJson(
              QuantityJson.of(QuantityKind.IRRADIANCE, limit.irradiance()),
              QuantityJson.of(QuantityKind.DURATION, limit.seconds()),
              QuantityJson.of(QuantityKind.LENGTH, limit.apertureMm()),
              limit.rule(),
              EyeLimits.SOURCE,
              limit.assumptions());
    }
  }

  /**
   * A scale number of EN 207.
   *
   * @param marking as it stands on eyewear
   */
  public record ScaleJson(
      En207.Condition condition,
      int scaleNumber,
      String marking,
      String source,
      List<String> assumptions) {}

  /**
   * How far the beam is too strong.
   *
   * @param distance left out where something is not known
   * @param missing what is
   * @param formula of the distance
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record ReachJson(
      EyeProtection.Way way,
      @Nullable QuantityJson distance,
      @Nullable String missing,
      @Nullable String formula,
      String source,
      List<String> assumptions) {
    static ReachJson of(EyeProtection.Reach reach) {
      HazardDistance.Distance found = reach.distance();
      return new ReachJson(
          reach.way(),
          found == null ? null : QuantityJson.of("m", Upward.distance(found.metres())),
          reach.missing(),
          found == null ? null : found.formula(),
          HazardDistance.SOURCE,
          found == null ? List.of() : found.assumptions());
    }
  }

  public static EyeProtectionJson of(EyeProtection eyes) {
    EyeMinima minima = eyes.minima();
    return new EyeProtectionJson(
        eyes.machine().id(),
        eyes.fits().stream().map(FitJson::of).toList(),
        eyes.warnings(),
        LimitJson.of(minima.limit()),
        Densities.of(minima),
        minima.scales().entrySet().stream()
            .map(
                e ->
                    new ScaleJson(
                        e.getKey(),
                        e.getValue().number(),
                        e.getValue().marking(),
                        En207.SOURCE,
                        e.getValue().assumptions()))
            .toList(),
        eyes.reaches().stream().map(ReachJson::of).toList(),
        EyeLimits.CLOSING);
  }
}
