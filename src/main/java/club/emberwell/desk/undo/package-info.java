/** Undoing what a member or a rule did since a time: {@link club.emberwell.desk.undo.Undos}. */
package club.emberwell.desk.undo;
