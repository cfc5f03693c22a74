/**
 * Quantiles, intervals and fits: plain static methods on {@code double[]}, pure and deterministic.
 *
 * <p>One rule for bad input throughout: a NaN or an infinite value is refused with {@link
 * IllegalArgumentException}, as is a value that must be positive and is not; no data is no error.
 * With too little data for an answer a method returns an empty {@link java.util.Optional} (or NaN
 * where it returns a plain number) and says so in its description. No argument array is ever
 * changed unless the method's name ends in {@code InPlace}.
 */
package club.emberwell.stats;
