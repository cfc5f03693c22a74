/**
 * Pages about the club and for programs.
 *
 * <p>Entry points: {@link club.emberwell.web.about.AboutPages}.
 */
package club.emberwell.web.about;
