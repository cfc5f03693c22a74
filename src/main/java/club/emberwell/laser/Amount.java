package club.emberwell.laser;

import club.emberwell.quantity.QuantityKind;

/** A number of the canonical unit of its kind of quantity. */
public record Amount(QuantityKind kind, double number) {}
