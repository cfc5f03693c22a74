/**
 * Test pieces a member keeps: each with a tag, where it lies and which report or grid it shows.
 *
 * <p>Entry points: {@link club.emberwell.sample.Samples}.
 */
package club.emberwell.sample;
