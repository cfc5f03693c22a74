/**
 * Photos on pages: {@link club.emberwell.web.photo.ChosenPhotos} in every form that makes something
 * with photos, {@link club.emberwell.web.photo.PhotoPages} to add and change them afterwards,
 * {@link club.emberwell.web.photo.PhotoFiles} the pictures themselves.
 */
package club.emberwell.web.photo;
