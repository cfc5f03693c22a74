/**
 * Pages of ranges and of their comparison.
 *
 * <p>Entry points: {@link club.emberwell.web.range.RangePages}; the view records hold texts ready
 * to print.
 */
package club.emberwell.web.range;
