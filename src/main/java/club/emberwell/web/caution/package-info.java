/**
 * Cautions as every page shows them: what a source says, never that something is safe.
 *
 * <p>Entry points: {@link club.emberwell.web.caution.CautionsView} is what the tag {@code cautions}
 * places, {@link club.emberwell.web.caution.CautionView} one of its boxes.
 */
package club.emberwell.web.caution;
