package club.emberwell.web.dose;

import club.emberwell.bench.Machine;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.frame.SentForm;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** The calculator of eyes with one of the reader's machines filled in. */
public final class EyesLink {
  private EyesLink() {}

  /** Its address; what the owner did not say stays empty. */
  public static String of(Machine machine) {
    WrittenLaser w = machine.written().laser();
    Map<String, String> values = new LinkedHashMap<>();
    values.put("machine", machine.id().toString());
    values.put(
        "wavelength",
        QuantityPrinter.print(
            machine.laser().wavelengthNm(), QuantityKind.WAVELENGTH, UnitPreferences.metric()));
    values.put("power", SentForm.typed(w.ratedPower()));
    values.put("beam", SentForm.typed(w.inputBeam()));
    values.put("divergence", SentForm.typed(machine.written().built().divergence()));
    values.put("lens", SentForm.typed(w.lens()));
    values.put("atLens", SentForm.typed(w.inputBeam()));
    return values.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&", "/dose/eyes?", ""));
  }
}
