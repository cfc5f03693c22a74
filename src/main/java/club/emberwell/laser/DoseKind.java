package club.emberwell.laser;

import club.emberwell.quantity.QuantityKind;

/** Area work is compared by nominal J/mm2, line work by nominal J/mm; the two never mix. */
public enum DoseKind {
  AREAL(QuantityKind.AREAL_DOSE),
  LINE(QuantityKind.LINE_DOSE);

  private final QuantityKind quantity;

  DoseKind(QuantityKind quantity) {
    this.quantity = quantity;
  }

  /** What such a dose is measured in. */
  public QuantityKind quantity() {
    return quantity;
  }
}
