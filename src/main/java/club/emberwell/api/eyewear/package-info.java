/**
 * A member's glasses, and what is calculated for the eyes beside a machine, over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.eyewear.EyewearResource}.
 */
package club.emberwell.api.eyewear;
