/**
 * What keeps a copy of the public reports up to date: {@link
 * club.emberwell.report.copy.ReportChanges}.
 */
package club.emberwell.report.copy;
