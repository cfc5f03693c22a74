/**
 * What is passed on of a page: the picture that link previews show, and the page with its link and
 * its QR code.
 *
 * <p>Entry points: {@link club.emberwell.web.share.PreviewPictures}, {@link
 * club.emberwell.web.share.SharePages}.
 */
package club.emberwell.web.share;
