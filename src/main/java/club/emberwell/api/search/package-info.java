/**
 * Searching reports over the API.
 *
 * <p>Entry points: {@link club.emberwell.api.search.ReportSearchResource}.
 */
package club.emberwell.api.search;
