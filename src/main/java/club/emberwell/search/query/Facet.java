package club.emberwell.search.query;

import club.emberwell.catalog.TermKind;
import club.emberwell.remark.Coded;
import java.util.Optional;

/** What a search can be narrowed by. The code is the word in the API and in addresses. */
public enum Facet implements Coded {
  SOURCE("source", "Laser source"),
  POWER_CLASS("powerClass", "Power class"),
  BAND("band", "Wavelength"),
  REGIME("regime", "Pulse regime"),
  MATERIAL("material", "Material"),
  COATING("coating", "Coating"),
  COLOUR("colour", "Colour"),
  PROCESS("process", "Process"),
  EFFECT("effect", "Effect"),
  MOTION("motion", "Motion"),
  CONTROLLER_VERSION("controllerVersion", "Controller version"),
  MEMBER("member", "Member");

  /** The value of a report that does not say. */
  public static final String NOT_GIVEN = "not-given";

  /** The value of a report whose words no moderator has filed yet. */
  public static final String NOT_FILED = "not-filed";

  private final String code;
  private final String label;

  Facet(String code, String label) {
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

  /** The vocabulary its values come from, where they do; such values form a tree. */
  public Optional<TermKind> vocabulary() {
    return switch (this) {
      case MATERIAL -> Optional.of(TermKind.MATERIAL);
      case COATING -> Optional.of(TermKind.COATING);
      case COLOUR -> Optional.of(TermKind.COLOUR);
      default -> Optional.empty();
    };
  }

  /** True where the trials of one report can differ in it. */
  public boolean ofTrial() {
    return this == EFFECT;
  }

  /** Name of the index field, which holds exactly one value per trial. */
  public String field() {
    return "f_" + code;
  }
}
