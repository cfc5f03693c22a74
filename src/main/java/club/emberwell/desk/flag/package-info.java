/** What members say is wrong with an entry: {@link club.emberwell.desk.flag.Flags}. */
package club.emberwell.desk.flag;
