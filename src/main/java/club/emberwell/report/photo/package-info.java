/**
 * The pictures of reports, questions and answers: cleaned before they are kept in all their sizes,
 * entries like everything else members add.
 *
 * <p>Entry points: {@link club.emberwell.report.photo.Photos}, {@link
 * club.emberwell.report.photo.ShownPhotos} what readers see of them; {@link
 * club.emberwell.report.photo.ParkedPhotos} for forms that are not stored yet; {@link
 * club.emberwell.report.photo.PhotoSpace} how much a member may keep.
 */
package club.emberwell.report.photo;
