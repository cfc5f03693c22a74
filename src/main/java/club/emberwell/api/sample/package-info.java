/**
 * A member's samples over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.sample.SampleResource}.
 */
package club.emberwell.api.sample;
