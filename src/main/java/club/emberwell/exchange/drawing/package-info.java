/**
 * Draws what a result of the invented club would look like, by where its dose lies in the window of
 * its work. Entry points: {@link club.emberwell.exchange.drawing.Looks} and {@link
 * club.emberwell.exchange.drawing.Drawing}.
 */
package club.emberwell.exchange.drawing;
