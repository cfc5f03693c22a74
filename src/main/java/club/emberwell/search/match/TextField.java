package club.emberwell.search.match;

import java.util.EnumSet;
import java.util.Set;

/** Where a word can be found, and how much a find there weighs. */
public enum TextField {
  MATERIAL("t_material", 4),
  COATING("t_coating", 3),
  COLOUR("t_colour", 3),
  LASER("t_laser", 2),
  LOT("t_lot", 2),
  CONTROLLER("t_controller", 2),
  MACHINE("t_machine", 1.5f),
  MEMBER("t_member", 1.5f),
  NOTES("t_notes", 1);

  /** What was worked on. */
  static final Set<TextField> SUBJECT = EnumSet.of(MATERIAL, COATING, COLOUR);

  private final String field;
  private final float weight;

  TextField(String field, float weight) {
    this.field = field;
    this.weight = weight;
  }

  public String field() {
    return field;
  }

  float weight() {
    return weight;
  }
}
