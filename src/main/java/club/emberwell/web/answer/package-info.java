/**
 * The answer to a search that meets one work: a panel on the find page and on the range page.
 *
 * <p>Entry point: {@link club.emberwell.web.answer.AnswerViews}; the view records hold texts ready
 * to print.
 */
package club.emberwell.web.answer;
