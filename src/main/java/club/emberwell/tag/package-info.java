/**
 * Short codes for physical things: what stands on a label leads back to its entry.
 *
 * <p>Entry points: {@link club.emberwell.tag.Tags} gives and finds them, {@link
 * club.emberwell.tag.TagCode} reads what was typed, {@link club.emberwell.tag.QrCode} draws the
 * square beside them.
 */
package club.emberwell.tag;
