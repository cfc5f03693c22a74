/**
 * What was noticed while reading an entry.
 *
 * <p>Entry points: {@link club.emberwell.remark.Remark}, gathered by {@link
 * club.emberwell.remark.Remarks} while reading; {@link club.emberwell.remark.Reading} holds what
 * came out with what was noticed; {@link club.emberwell.remark.EntryRefused}, {@link
 * club.emberwell.remark.EntryUnknown}, {@link club.emberwell.remark.EntryForbidden}, {@link
 * club.emberwell.remark.EntryChanged}, {@link club.emberwell.remark.Unproven} and {@link
 * club.emberwell.remark.TooManyTries} are the ways in which a service says no.
 */
package club.emberwell.remark;
