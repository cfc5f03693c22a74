package club.emberwell.consensus.range;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;

/**
 * What a range is about. Trials of different keys are never mixed: area with line work, continuous
 * with pulsed light and different wavelength bands have different mechanisms, and a range is a
 * claim about the next member who does the same work.
 *
 * @param light band of the wavelength
 */
public record RangeKey(Process process, Light light, Regime regime, WorkKey work) {
  /**
   * Where the wavelength lies.
   *
   * @param nm outside the named bands the wavelength, to 1 %; else 0
   */
  public record Light(WavelengthBand band, int nm) {
    private static final double STEP = Math.log(1.01);

    static Light of(WavelengthBand band) {
      return new Light(band, 0);
    }

    /** Where the light of a laser lies. */
    public static Light of(Laser laser) {
      return laser.band() == WavelengthBand.OTHER
          ? ofStep(step(laser.wavelengthNm()))
          : of(laser.band());
    }

    /** The step of 1 % a wavelength lies in; 0 where it is not known. */
    static int step(double nm) {
      return nm > 1 ? (int) Math.round(Math.log(nm) / STEP) : 0;
    }

    static Light ofStep(int step) {
      return new Light(
          WavelengthBand.OTHER, step == 0 ? 0 : (int) Math.round(Math.exp(step * STEP)));
    }

    public String words() {
      return nm == 0 ? band.label() : "about " + nm + " nm";
    }
  }

  public WavelengthBand band() {
    return light.band();
  }

  /** True where the same kind of light does it: doses may be compared. */
  public boolean sameLight(RangeKey other) {
    return light.equals(other.light) && regime == other.regime;
  }

  /** True where this laser's light is of the kind that did it. */
  public boolean litBy(Laser laser) {
    return light.equals(Light.of(laser)) && regime == laser.regime();
  }

  /** True where the same is done to the same, perhaps by another kind of laser. */
  public boolean sameWork(RangeKey other) {
    return process == other.process && work.equals(other.work);
  }

  /** The laser in words: "405-455 nm, continuous". */
  public String laser() {
    return light.words() + ", " + regime.label();
  }

  /** In words, for headings: "Slate: surface engraving, 405-455 nm, continuous". */
  public String words() {
    return work.words() + ": " + WorkKey.lower(process.label()) + ", " + laser();
  }
}
