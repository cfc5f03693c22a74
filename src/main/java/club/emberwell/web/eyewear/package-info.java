/**
 * Pages of one's glasses, and of what they do for one's machines.
 *
 * <p>Entry points: {@link club.emberwell.web.eyewear.EyewearPages}.
 */
package club.emberwell.web.eyewear;
