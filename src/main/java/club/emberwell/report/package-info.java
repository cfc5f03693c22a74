/**
 * Reports with their trials: posted, edited, kept, read again.
 *
 * <p>Entry points: {@link club.emberwell.report.ReportService} posts, edits, withdraws and repeats;
 * {@link club.emberwell.report.photo.Photos} keeps pictures; {@link
 * club.emberwell.report.ReportSource} reads many at two statements a batch; {@link
 * club.emberwell.report.reading.ReportInterpreter} is the pure function from what was written to
 * what was read, {@link club.emberwell.report.ReportRereading} applies it again when words were
 * filed anew.
 *
 * <p>Cost of a write: one transaction with its entry, a revision and a row per trial. A change of
 * the catalog costs three scans for distinct words and then only the reports that come out
 * differently.
 */
package club.emberwell.report;
