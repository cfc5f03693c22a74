package club.emberwell.laser.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Maximum permissible exposure of the eye to a point source, single exposure. Directive 2006/25/EC
 * Annex II Tables 2.2 to 2.6 and ICNIRP, Health Phys. 105(3) 271-295 (2013), Tables 3, 5, 7, 8, as
 * cross-read against an open transcription; neither IEC 60825-1 nor ANSI Z136.1 was read.
 */
public final class EyeLimits {
  /** Ends every answer about eyewear, limits and distances. */
  public static final String CLOSING =
      "A calculated minimum. It does not mean that eyewear is enough: ask a laser safety officer;"
          + " local rules decide.";

  /** Where the numbers come from, for whoever reads one. */
  public static final String SOURCE =
      "ICNIRP 2013 and Directive 2006/25/EC, read in an open transcription; neither IEC 60825-1 nor"
          + " ANSI Z136.1 was read";

  /** Time an eye is taken to stay open to a visible beam before it turns away, s. */
  public static final double AVERSION_SECONDS = 0.25;

  /** Time of an accidental look at an invisible beam, s. */
  public static final double INVISIBLE_SECONDS = 10;

  /** Which set of limits; they differ for short pulses, in the near ultraviolet and near 1.3 um. */
  public enum Edition {
    /** What IEC 60825-1:2014 adopted too, apart from {@link #IEC_2014}. */
    ICNIRP_2013,
    DIRECTIVE_2006_25,
    /** As ICNIRP 2013, but 10 W/m2 at 315 to 400 nm after 1000 s. */
    IEC_2014
  }

  /**
   * The limit for one wavelength and duration.
   *
   * @param irradiance averaged over the exposure, W/m2
   * @param radiantExposure the same as J/m2
   * @param apertureMm limiting aperture, mm
   * @param rule the branch of the table that governs
   * @param assumptions what it rests on
   * @param closing always shown
   */
  public record Limit(
      double wavelengthNm,
      double seconds,
      double irradiance,
      double radiantExposure,
      double apertureMm,
      String rule,
      List<String> assumptions,
      String closing) {
    /** Area of the limiting aperture, m2. */
    public double apertureM2() {
      return areaM2(apertureMm);
    }
  }

  /** A branch of the table: what limits, as J/m2 over the exposure. */
  private record Branch(String rule, double radiantExposure) {}

  private EyeLimits() {}

  /** True from 400 to 700 nm, where the aversion response may be counted on. */
  public static boolean visible(double nm) {
    return nm >= 400 && nm <= 700;
  }

  /** Duration of an accidental exposure, s: 0.25 for visible light, 10 otherwise. */
  public static double accidentalSeconds(double nm) {
    return visible(nm) ? AVERSION_SECONDS : INVISIBLE_SECONDS;
  }

  /** Limit after ICNIRP 2013; empty where its tables as read here say nothing. */
  public static Optional<Limit> limit(double nm, double seconds) {
    return limit(nm, seconds, Edition.ICNIRP_2013);
  }

  /**
   * The limit. Empty below 315 nm, from 1400 to 2600 nm, for pulses shorter than the tables (10 ps
   * from 400 to 1400 nm in 2013, else 1 ns) and beyond 30 000 s.
   */
  public static Optional<Limit> limit(double nm, double seconds, Edition edition) {
    return branch(nm, seconds, edition)
        .map(
            branch ->
                new Limit(
                    nm,
                    seconds,
                    branch.radiantExposure() / seconds,
                    branch.radiantExposure(),
                    apertureMm(nm, seconds),
                    branch.rule(),
                    assumptions(nm, seconds, edition),
                    CLOSING));
  }

  private static Optional<Branch> branch(double nm, double t, Edition edition) {
    double shortest = edition != Edition.DIRECTIVE_2006_25 && nm >= 400 && nm < 1400 ? 1e-11 : 1e-9;
    if (!(t >= shortest && t <= 30_000)) {
      return Optional.empty();
    }
    if (nm >= 315 && nm < 400) {
      return Optional.of(nearUltraviolet(t, edition));
    }
    if (nm >= 400 && nm < 1050) {
      return Optional.of(retinal(nm, t, edition));
    }
    if (nm >= 1050 && nm < 1400) {
      return Optional.of(nearInfrared(nm, t, edition));
    }
    return nm >= 2600 && nm <= 1e6 ? Optional.of(farInfrared(t)) : Optional.empty();
  }

  private static Branch nearUltraviolet(double t, Edition edition) {
    if (t < 10) {
      return new Branch("H = 5600 t^0.25 J/m2", 5.6e3 * Math.pow(t, 0.25));
    }
    if (edition == Edition.IEC_2014 && t > 1000) {
      return new Branch("E = 10 W/m2", 10 * t);
    }
    return new Branch("H = 10000 J/m2", 1e4);
  }

  private static Branch retinal(double nm, double t, Edition edition) {
    boolean directive = edition == Edition.DIRECTIVE_2006_25;
    double ca = ca(nm);
    if (t < (directive ? 18e-6 : 5e-6)) {
      return directive
          ? new Branch("H = 0.005 C_A J/m2", 5e-3 * ca)
          : new Branch("H = 0.002 C_A J/m2", 2e-3 * ca);
    }
    if (t < 10) {
      return new Branch("H = 18 C_A t^0.75 J/m2", 18 * ca * Math.pow(t, 0.75));
    }
    Branch thermal = new Branch("E = 10 C_A W/m2", 10 * ca * t);
    if (nm > 600) {
      return thermal;
    }
    Branch photochemical =
        t < 100
            ? new Branch("photochemical: H = 100 C_B J/m2", 100 * cb(nm))
            : new Branch("photochemical: E = C_B W/m2", cb(nm) * t);
    return photochemical.radiantExposure() < thermal.radiantExposure() ? photochemical : thermal;
  }

  private static Branch nearInfrared(double nm, double t, Edition edition) {
    boolean directive = edition == Edition.DIRECTIVE_2006_25;
    double cc = cc(nm, edition);
    if (t < (directive ? 50e-6 : 13e-6)) {
      return directive
          ? new Branch("H = 0.05 C_C J/m2", 5e-2 * cc)
          : new Branch("H = 0.02 C_C J/m2", 2e-2 * cc);
    }
    return t < 10
        ? new Branch("H = 90 C_C t^0.75 J/m2", 90 * cc * Math.pow(t, 0.75))
        : new Branch("E = 50 C_C W/m2", 50 * cc * t);
  }

  private static Branch farInfrared(double t) {
    if (t < 1e-7) {
      return new Branch("H = 100 J/m2", 100);
    }
    return t < 10
        ? new Branch("H = 5600 t^0.25 J/m2", 5.6e3 * Math.pow(t, 0.25))
        : new Branch("E = 1000 W/m2", 1000 * t);
  }

  /**
   * Time within which pulses count as one of their summed energy, s. Directive 2006/25/EC Annex II
   * Table 2.6, T_min, read in its French transposition (Code du travail, quatrième partie, annexe
   * II); T_i of the newer edition is where the rows of its own table change.
   */
  static double mergingSeconds(double nm, Edition edition) {
    boolean directive = edition == Edition.DIRECTIVE_2006_25;
    if (nm < 400) {
      return 1e-9;
    }
    if (nm < 1050) {
      return directive ? 18e-6 : 5e-6;
    }
    if (nm < 1400) {
      return directive ? 50e-6 : 13e-6;
    }
    if (nm < 1500) {
      return 1e-3;
    }
    if (nm < 1800) {
      return 10;
    }
    return nm < 2600 ? 1e-3 : 1e-7;
  }

  /** C_A: less is absorbed towards the infrared. */
  static double ca(double nm) {
    if (nm < 700) {
      return 1;
    }
    return nm < 1050 ? Math.pow(10, 0.002 * (nm - 700)) : 5;
  }

  /** C_B: the photochemical hazard falls above 450 nm. */
  static double cb(double nm) {
    return nm < 450 ? 1 : Math.pow(10, 0.02 * (nm - 450));
  }

  /** C_C: water absorbs ahead of the retina above 1150 nm. */
  static double cc(double nm, Edition edition) {
    if (nm < 1150) {
      return 1;
    }
    if (nm < 1200) {
      return Math.pow(10, 0.018 * (nm - 1150));
    }
    return edition == Edition.DIRECTIVE_2006_25 ? 8 : 8 + Math.pow(10, 0.04 * (nm - 1250));
  }

  /** Limiting aperture in mm: 7 where the retina is at risk, else by duration. */
  static double apertureMm(double nm, double t) {
    if (nm >= 400 && nm < 1400) {
      return 7;
    }
    if (t >= 10) {
      return 3.5;
    }
    return t <= 0.35 ? 1 : 1.5 * Math.pow(t, 0.375);
  }

  static double areaM2(double diameterMm) {
    double metres = diameterMm / 1000;
    return Math.PI * metres * metres / 4;
  }

  private static List<String> assumptions(double nm, double seconds, Edition edition) {
    List<String> list = new ArrayList<>();
    list.add("Point source, one exposure, the eye only; limits of " + named(edition) + ".");
    if (!visible(nm) && seconds < INVISIBLE_SECONDS) {
      list.add(
          "Invisible beam: the eye does not turn away (the 0.25 s aversion response does not"
              + " apply); an accidental look counts as 10 s.");
    } else if (visible(nm) && seconds <= AVERSION_SECONDS) {
      list.add(
          "The eye is assumed to turn away within 0.25 s. This does not protect anybody who stares"
              + " or is dazzled.");
    }
    return list;
  }

  private static String named(Edition edition) {
    return switch (edition) {
      case ICNIRP_2013 -> "ICNIRP 2013";
      case DIRECTIVE_2006_25 -> "Directive 2006/25/EC";
      case IEC_2014 -> "IEC 60825-1:2014 as quoted elsewhere";
    };
  }
}
