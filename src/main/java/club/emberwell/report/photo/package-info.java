/**
 * The pictures of reports: cleaned before they are kept, entries like everything else members add.
 *
 * <p>Entry point: {@link club.emberwell.report.photo.Photos}.
 */
package club.emberwell.report.photo;
