/**
 * The moderators' desk. Here is what its parts share: who may do what ({@link
 * club.emberwell.desk.DeskAccess}), limits ({@link club.emberwell.desk.DeskLimits}) and what an
 * operator sets ({@link club.emberwell.desk.DeskConfig}). The parts: {@code home} the first screen
 * and the members, {@code flag} what was flagged, {@code rule} what rules noticed, {@code word} the
 * vocabulary and the cautions, {@code supplier} which names of suppliers mean one, {@code undo}
 * what can be undone, {@code log} who did what.
 */
package club.emberwell.desk;
