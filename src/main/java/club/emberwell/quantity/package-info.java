/**
 * Quantities as people type them: read exactly, normalise, print.
 *
 * <p>Entry points: {@link club.emberwell.quantity.QuantityReader} (text or UCUM to a quantity, or a
 * refusal with the possible readings), {@link club.emberwell.quantity.QuantityPrinter} (for people,
 * in the units of {@link club.emberwell.quantity.UnitPreferences}). Units and their spellings are
 * in {@code shared/vocabulary/units.yaml} ({@link club.emberwell.quantity.UnitWords} for people);
 * mistaken spellings, choices and sheet gauges are the text files beside the classes; every limit
 * is in {@code QuantityLimits}. Factors come from UCUM by way of Indriya's rational numbers, so
 * nothing is rounded before the stored value. Reading takes microseconds and a bounded amount of
 * memory, whatever is typed; the first call loads the unit tables.
 */
package club.emberwell.quantity;
