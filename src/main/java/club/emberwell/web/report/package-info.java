/**
 * Pages of a report.
 *
 * <p>Entry points: {@link club.emberwell.web.report.PostPages} posts, edits and repeats by one
 * form; {@link club.emberwell.web.report.ReportPages} shows a report, its history and its
 * withdrawal.
 */
package club.emberwell.web.report;
