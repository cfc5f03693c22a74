package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** What is done to the work. */
public enum Process implements Coded {
  SURFACE_ENGRAVING("surface-engraving", "Surface engraving", DoseKind.AREAL),
  DEEP_ENGRAVING("deep-engraving", "Deep engraving", DoseKind.AREAL),
  COATING_REMOVAL("coating-removal", "Coating removal", DoseKind.AREAL),
  COLOUR_MARKING("colour-marking", "Colour marking", DoseKind.AREAL),
  CUT("cut", "Cut", DoseKind.LINE),
  SCORE("score", "Score", DoseKind.LINE);

  private final String code;
  private final String label;
  private final DoseKind doseKind;

  Process(String code, String label, DoseKind doseKind) {
    this.code = code;
    this.label = label;
    this.doseKind = doseKind;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  public DoseKind doseKind() {
    return doseKind;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<Process> of(String code) {
    return Codes.find(values(), Process::code, code);
  }
}
