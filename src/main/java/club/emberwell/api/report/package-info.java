/**
 * Reports over JSON: post, read, edit, withdraw, repeat, history, pictures.
 *
 * <p>Entry points: {@link club.emberwell.api.report.ReportResource}; {@link
 * club.emberwell.api.report.PhotoResource}.
 */
package club.emberwell.api.report;
