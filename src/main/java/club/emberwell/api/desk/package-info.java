/** The moderators' desk, and flags and proposals of members, over JSON. */
package club.emberwell.api.desk;
