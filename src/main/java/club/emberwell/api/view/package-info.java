/**
 * How entries look in JSON: shared by every resource that answers them.
 *
 * <p>Entry points: {@link club.emberwell.api.view.ReportViews} makes a {@link
 * club.emberwell.api.view.ReportJson}.
 */
package club.emberwell.api.view;
