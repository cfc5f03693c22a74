package club.emberwell.web.dose;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machine;
import club.emberwell.bench.MachineLimits;
import club.emberwell.eyewear.Glasses;
import club.emberwell.laser.Regime;
import club.emberwell.laser.safety.Coverage;
import club.emberwell.laser.safety.EyeBeam;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.laser.safety.EyeMinima;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Eyewear and distances in one state.
 *
 * @param eyewear minima; empty before anything was asked
 * @param distances those that the given inputs allow
 * @param missing what further values would need
 * @param closing ends every answer
 * @param own what of the reader's is beside it
 */
record EyesView(
    Form form,
    List<Worked> eyewear,
    List<Worked> distances,
    List<String> missing,
    List<String> wavelengths,
    String closing,
    Own own) {
  private static final List<String> ASKING = List.of("wavelength", "power");

  /**
   * What is the reader's; nothing for strangers.
   *
   * @param machines links that fill one in
   * @param machine the one that is filled in, or null
   * @param fits how the reader's glasses stand to the beam, the worst first
   */
  record Own(List<Link> machines, Link machine, List<Fit> fits) {
    /** One of the reader's machines by a link. */
    record Link(String href, String name) {}

    /** How a pair stands to the beam. */
    record Fit(String href, String name, String verdict, String because) {}
  }

  /** What was stated, in nm, W, mm, mrad, kHz, ns and a share of 1; null = not stated. */
  record Beam(
      Double nm,
      Double powerW,
      Double beamMm,
      Double divergenceMrad,
      Double lensMm,
      Double atLensMm,
      Double reflectance,
      Pulses pulses) {}

  /** A pulse train, kHz and ns; null = not stated. */
  record Pulses(Double rateKhz, Double durationNs) {
    boolean stated() {
      return rateKhz != null && durationNs != null;
    }
  }

  static EyesView of(
      SentForm sent, NumberStyle style, List<Machine> machines, List<Glasses> pairs) {
    Form form = form(sent.values());
    if (sent.lacks(ASKING)) {
      return answer(form, List.of(), List.of(), List.of(), own(sent, machines, List.of()));
    }
    FieldReader in = new FieldReader(style);
    Beam beam = read(in, sent);
    form.remarks(in.remarks());
    if (in.failed()) {
      return answer(form, List.of(), List.of(), List.of(), own(sent, machines, List.of()));
    }
    EyeAnswer worked = EyeAnswer.of(beam, style);
    return answer(
        form,
        worked.eyewear(),
        worked.distances(),
        worked.missing(),
        own(sent, machines, fits(beam, pairs, style)));
  }

  private static Own own(SentForm sent, List<Machine> machines, List<Own.Fit> fits) {
    UUID filled = sent.id("machine");
    return new Own(
        machines.stream().map(m -> new Own.Link(EyesLink.of(m), m.name())).toList(),
        machines.stream()
            .filter(m -> m.id().equals(filled))
            .map(m -> new Own.Link("/eyewear/machines/" + m.id(), m.name()))
            .findFirst()
            .orElse(null),
        fits);
  }

  private static List<Own.Fit> fits(Beam beam, List<Glasses> pairs, NumberStyle style) {
    Pulses pulses = beam.pulses();
    EyeMinima need =
        EyeMinima.of(
            new EyeBeam(
                beam.nm(),
                beam.powerW(),
                pulses.stated() ? Regime.ofPulseDuration(pulses.durationNs()) : Regime.CW,
                beam.beamMm(),
                pulses.stated()
                    ? new EyeBeam.Pulses(pulses.rateKhz(), pulses.durationNs())
                    : null));
    return pairs.stream()
        .map(pair -> Map.entry(pair, Coverage.of(pair.printed(), need, style)))
        .sorted(Comparator.comparing(found -> found.getValue().verdict()))
        .map(found -> fit(found.getKey(), found.getValue()))
        .toList();
  }

  private static Own.Fit fit(Glasses pair, Coverage coverage) {
    return new Own.Fit(
        "/eyewear/" + pair.id(), pair.name(), coverage.verdict().label(), coverage.because());
  }

  private static EyesView answer(
      Form form, List<Worked> eyewear, List<Worked> distances, List<String> missing, Own own) {
    return new EyesView(
        form, eyewear, distances, missing, UsualWavelength.all(), EyeLimits.CLOSING, own);
  }

  private static Form form(Map<String, String> values) {
    Form form = new Form();
    form.add(Field.of("machine", "Machine").hidden());
    form.add(
        Field.quantity("wavelength", "Wavelength", "455 nm, 10.6 µm")
            .list("wavelengths")
            .required());
    form.add(
        Field.quantity("power", "Power that could reach the eye", "The full rated power, 20 W")
            .required());
    form.add(
        Field.quantity(
            "beam", "Beam diameter at the eye", "4 mm; or where the beam leaves the machine"));
    form.add(Field.quantity("divergence", "Divergence (full angle, 1/e²)", "2 mrad"));
    form.add(Field.quantity("lens", "Lens (focal length)", "50 mm, 2 in"));
    form.add(Field.quantity("atLens", "Beam diameter at the lens", "6 mm"));
    form.add(
        Field.quantity(
            "reflectance", "Share a matt surface reflects", "60 %; empty = all of it, 100 %"));
    form.add(
        Field.quantity(
            "repetitionRate", "Frequency (pulse repetition rate)", "30 kHz; pulsed lasers only"));
    form.add(Field.quantity("pulseDuration", "Pulse duration", "200 ns; pulsed lasers only"));
    return form.fill(values);
  }

  private static Beam read(FieldReader in, SentForm sent) {
    in.required("/wavelength", sent.text("wavelength"));
    in.required("/power", sent.text("power"));
    Pulses pulses =
        new Pulses(
            in.quantity(
                "/repetitionRate",
                QuantityKind.REPETITION_RATE,
                sent.quantity("repetitionRate"),
                CalculatorLimits.RATE_KHZ),
            in.quantity(
                "/pulseDuration",
                QuantityKind.PULSE_DURATION,
                sent.quantity("pulseDuration"),
                CalculatorLimits.DURATION_NS));
    if ((pulses.rateKhz() == null) != (pulses.durationNs() == null) && !in.failed()) {
      in.add(
          Remark.error(
              RemarkId.PULSES_INCOMPLETE,
              pulses.rateKhz() == null ? "/repetitionRate" : "/pulseDuration",
              "Enter both frequency and pulse duration, or neither."));
    }
    return new Beam(
        in.quantity(
            "/wavelength",
            QuantityKind.WAVELENGTH,
            sent.quantity("wavelength"),
            CalculatorLimits.WAVELENGTH_NM),
        in.quantity("/power", QuantityKind.POWER, sent.quantity("power"), CalculatorLimits.POWER_W),
        length(in, sent, "beam", CalculatorLimits.BEAM_MM),
        in.quantity(
            "/divergence",
            QuantityKind.DIVERGENCE,
            sent.quantity("divergence"),
            MachineLimits.DIVERGENCE_MRAD),
        length(in, sent, "lens", CalculatorLimits.FOCAL_MM),
        length(in, sent, "atLens", CalculatorLimits.BEAM_MM),
        share(in, sent),
        pulses);
  }

  private static Double length(FieldReader in, SentForm sent, String name, Bounds bounds) {
    return in.quantity("/" + name, QuantityKind.FOCAL_LENGTH, sent.quantity(name), bounds);
  }

  private static Double share(FieldReader in, SentForm sent) {
    Double percent =
        in.quantity(
            "/reflectance",
            QuantityKind.POWER_PERCENT,
            sent.quantity("reflectance"),
            CalculatorLimits.PERCENT);
    return percent == null ? null : percent / 100;
  }
}
