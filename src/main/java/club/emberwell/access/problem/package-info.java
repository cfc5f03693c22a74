/**
 * Why a request was not done, as RFC 9457 says it: {@link club.emberwell.access.problem.Problems}
 * makes it, {@link club.emberwell.access.problem.Errors} answers with it in JSON or as a page.
 */
package club.emberwell.access.problem;
