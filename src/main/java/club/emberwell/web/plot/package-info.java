/**
 * Plots laid out in drawing units, ready for a template to place.
 *
 * <p>Entry points: {@link club.emberwell.web.plot.StripPlot} puts values of members on one axis;
 * {@link club.emberwell.web.plot.DosePlot} puts tests over their dose, {@link
 * club.emberwell.web.plot.SpeedPlot} speed against power; {@link club.emberwell.web.plot.Axis}
 * chooses scale and marks.
 */
package club.emberwell.web.plot;
