/** The moderators' desk as pages, and members' own flags and proposals. */
package club.emberwell.web.desk;
