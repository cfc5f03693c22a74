/**
 * Pages about the club and for programs.
 *
 * <p>Entry points: {@link club.emberwell.web.about.AboutPages}; {@link
 * club.emberwell.web.about.ApiPages} over {@link club.emberwell.web.about.ApiReference}; {@link
 * club.emberwell.web.about.ProblemPages}.
 */
package club.emberwell.web.about;
