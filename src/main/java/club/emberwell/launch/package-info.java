/**
 * Starting and stopping: the command line, the home folder, the built-in database, health.
 *
 * <p>Entry points: {@link club.emberwell.launch.Main} is the program; {@link
 * club.emberwell.launch.Server} one run of it; {@link club.emberwell.launch.EmbeddedPostgres} the
 * database it brings along; {@link club.emberwell.launch.Rescue} what only somebody on the machine
 * can do.
 */
package club.emberwell.launch;
