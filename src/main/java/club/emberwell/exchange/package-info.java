/**
 * What goes in and out of a club as files: the scenario of the demo, later exports and imports.
 *
 * <p>Entry points: {@link club.emberwell.exchange.ScenarioLoader}; {@link
 * club.emberwell.exchange.MemberDownload} and {@link club.emberwell.exchange.Eraser} serve a
 * member's rights.
 */
package club.emberwell.exchange;
