package club.emberwell.laser;

/** Area work is compared by nominal J/mm2, line work by nominal J/mm; the two never mix. */
public enum DoseKind {
  AREAL,
  LINE
}
