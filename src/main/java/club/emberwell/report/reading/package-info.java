/**
 * What a report says: as written, and as read from that. Pure: no database.
 *
 * <p>Entry points: {@link club.emberwell.report.reading.ReportInterpreter} is the function from a
 * {@link club.emberwell.report.reading.WrittenReport} to an {@link
 * club.emberwell.report.reading.Interpretation}, step by step; {@link
 * club.emberwell.report.reading.SettingsReader} reads settings wherever they stand, {@link
 * club.emberwell.report.reading.DoseCalculator} what follows from them, and {@link
 * club.emberwell.report.reading.WrittenDifference} tells two versions apart.
 */
package club.emberwell.report.reading;
