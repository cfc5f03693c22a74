package club.emberwell.bench;

import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.FocusedSpot;
import club.emberwell.laser.dose.Plausibility;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.List;
import java.util.OptionalDouble;

/** Reads a machine from what its owner wrote; pure. */
public final class MachineReader {
  /** What was read; fields at fault are null and then {@code laser} is null too. */
  public record Values(
      String name,
      String model,
      Laser laser,
      PulseControl pulseControl,
      String controllerVersion,
      Housing housing,
      Double divergenceMrad) {}

  /**
   * @param values to be stored only if no remark is an error
   */
  public record Result(Values values, List<Remark> remarks) {
    public boolean readable() {
      return Remarks.errors(remarks).isEmpty();
    }

    /** Warnings whose pointers the owner did not confirm. */
    public List<Remark> unconfirmed(List<String> confirmed) {
      return Remarks.unconfirmed(remarks, confirmed);
    }
  }

  private MachineReader() {}

  public static Result read(WrittenMachine written, NumberStyle style) {
    FieldReader in = new FieldReader(style);
    String name = in.text("/name", in.required("/name", written.name()), MachineLimits.NAME, false);
    String model = in.text("/model", written.model(), MachineLimits.MODEL, false);
    Laser laser = laser(in, "", written.laser(), written.gated(), written.maxSpeed(), true);
    PulseControl control =
        in.choice(
            "/pulseControl",
            written.pulseControl(),
            PulseControl::of,
            PulseControl.values(),
            PulseControl::code);
    String controller =
        in.text(
            "/controllerVersion",
            written.built().controllerVersion(),
            MachineLimits.CONTROLLER_VERSION,
            false);
    Housing housing =
        in.choice(
            "/housing",
            written.built().housing(),
            code -> Coded.of(Housing.class, code.strip()),
            Housing.values(),
            Housing::code);
    Double divergence =
        in.quantity(
            "/divergence",
            QuantityKind.DIVERGENCE,
            written.built().divergence(),
            MachineLimits.DIVERGENCE_MRAD);
    confirmed(in, written.confirmed());
    if (laser != null) {
      implausible(laser).forEach(in::add);
    }
    return new Result(
        new Values(name, model, laser, control, controller, housing, divergence), in.remarks());
  }

  /**
   * Warnings about a laser alone, at pointers without a prefix, e.g. {@code /wavelength}.
   *
   * @param laser as read
   */
  public static List<Remark> implausible(Laser laser) {
    return Plausibility.check(laser, Process.SCORE, Settings.NONE, Derived.NOTHING).stream()
        .filter(remark -> remark.field().startsWith("/laser/"))
        .map(remark -> remark.at(remark.field().substring("/laser".length())))
        .toList();
  }

  /** Pointers a person confirmed: few, short, and readable. */
  public static void confirmed(FieldReader in, List<String> pointers) {
    if (pointers == null) {
      return;
    }
    if (pointers.size() > MachineLimits.CONFIRMED) {
      in.add(
          Remark.error(
              RemarkId.TOO_MANY,
              "/confirmed",
              "At most " + MachineLimits.CONFIRMED + " fit here."));
      return;
    }
    for (int i = 0; i < pointers.size(); i++) {
      in.text("/confirmed/" + i, pointers.get(i), MachineLimits.POINTER, false);
    }
  }

  /**
   * Reads the fields of a laser; null where one is at fault.
   *
   * @param at pointer of the object they stand in, empty for the whole entry
   */
  public static Laser laser(FieldReader in, String at, WrittenLaser w) {
    return laser(in, at, w, null, null, false);
  }

  private static Laser laser(
      FieldReader in,
      String at,
      WrittenLaser w,
      Boolean gated,
      WrittenQuantity maxSpeed,
      boolean ofMachine) {
    boolean failedBefore = in.failed();
    LaserSource source =
        in.choice(
            at + "/source",
            in.required(at + "/source", w.source()),
            LaserSource::of,
            LaserSource.values(),
            LaserSource::code);
    Double wavelength = wavelength(in, at, w, ofMachine ? source : null);
    Double power =
        in.quantity(
            at + "/ratedPower",
            QuantityKind.POWER,
            in.required(at + "/ratedPower", w.ratedPower()),
            MachineLimits.RATED_POWER_W);
    Motion motion =
        in.choice(
            at + "/motion",
            in.required(at + "/motion", w.motion()),
            Motion::of,
            Motion.values(),
            Motion::code);
    Regime regime =
        in.choice(at + "/regime", w.regime(), Regime::of, Regime.values(), Regime::code);
    Double lens =
        in.quantity(at + "/lens", QuantityKind.FOCAL_LENGTH, w.lens(), MachineLimits.LENS_MM);
    Double beam =
        in.quantity(
            at + "/beamDiameter",
            QuantityKind.BEAM_DIAMETER,
            w.beamDiameter(),
            MachineLimits.BEAM_DIAMETER_UM);
    Double input = inputBeamMm(in, at, w);
    Double speed =
        in.quantity(at + "/maxSpeed", QuantityKind.SPEED, maxSpeed, MachineLimits.MAX_SPEED_MM_S);
    if (source == null
        || wavelength == null
        || power == null
        || motion == null
        || in.failed() && !failedBefore) {
      return null;
    }
    return new Laser(
        source,
        wavelength,
        power,
        motion,
        new Emission(
            regime == null ? usualRegime(in, at, source) : regime, Boolean.TRUE.equals(gated)),
        lens,
        beam == null ? spot(in, at, source, wavelength, lens, input) : beam,
        speed);
  }

  /** A machine's owner need not know it: the source tells the usual one, and that is said. */
  private static Double wavelength(FieldReader in, String at, WrittenLaser w, LaserSource source) {
    if (source != null && FieldReader.isAbsent(w.wavelength())) {
      String detail =
          "We assumed %d nm, as usual for a %s laser. Change it if the label says otherwise."
              .formatted(source.usualNm(), source.label());
      in.add(Remark.info(RemarkId.WAVELENGTH_ASSUMED, at + "/wavelength", detail));
      return (double) source.usualNm();
    }
    return in.quantity(
        at + "/wavelength",
        QuantityKind.WAVELENGTH,
        in.required(at + "/wavelength", w.wavelength()),
        MachineLimits.WAVELENGTH_NM);
  }

  /** The diameter of the beam before the lens, mm; null where not given or at fault. */
  public static Double inputBeamMm(FieldReader in, String at, WrittenLaser w) {
    return in.quantity(
        at + "/inputBeam", QuantityKind.LENGTH, w.inputBeam(), MachineLimits.INPUT_BEAM_MM);
  }

  private static Double spot(
      FieldReader in, String at, LaserSource source, double wavelength, Double lens, Double input) {
    if (lens == null || input == null) {
      return null;
    }
    OptionalDouble um = FocusedSpot.um(source, wavelength, new FocusedSpot.Lens(lens, input));
    if (um.isEmpty()) {
      return null;
    }
    String detail =
        "The spot size, %.0f µm, is calculated from lens and beam (M² %.1f), not measured."
            .formatted(um.getAsDouble(), FocusedSpot.usualM2(source).getAsDouble());
    in.add(Remark.info(RemarkId.SPOT_CALCULATED, at + "/beamDiameter", detail));
    return um.getAsDouble();
  }

  private static Regime usualRegime(FieldReader in, String at, LaserSource source) {
    Regime usual = source.usualRegime();
    String detail =
        "We assumed %s, as usual for a %s laser. Change it if that is wrong."
            .formatted(usual.label(), source.label());
    in.add(Remark.info(RemarkId.REGIME_ASSUMED, at + "/regime", detail));
    return usual;
  }
}
