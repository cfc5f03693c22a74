/**
 * Pages of the test pieces a member keeps: where they lie, and labels for them.
 *
 * <p>Entry points: {@link club.emberwell.web.sample.SamplePages}.
 */
package club.emberwell.web.sample;
