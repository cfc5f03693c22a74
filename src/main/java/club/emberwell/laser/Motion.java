package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** How the beam gets where it should be. */
public enum Motion implements Coded {
  GANTRY("gantry", "Gantry"),
  GALVO("galvo", "Galvo");

  private final String code;
  private final String label;

  Motion(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<Motion> of(String code) {
    return Codes.find(values(), Motion::code, code);
  }
}
