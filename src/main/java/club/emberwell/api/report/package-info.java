/**
 * Reports over JSON: post, read, edit, withdraw, repeat, history.
 *
 * <p>Entry point: {@link club.emberwell.api.report.ReportResource}.
 */
package club.emberwell.api.report;
