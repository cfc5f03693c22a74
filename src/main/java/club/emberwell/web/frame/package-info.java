/**
 * What every page needs.
 *
 * <p>Entry points: {@link club.emberwell.web.frame.Pages} is the base of all pages and takes what a
 * form sent, {@link club.emberwell.web.frame.FormPage} stores it or shows it again; {@link
 * club.emberwell.web.frame.PageFrame} is what the frame round a page asks for; {@link
 * club.emberwell.web.frame.SentForm}, {@link club.emberwell.web.frame.Form} and {@link
 * club.emberwell.web.frame.Field} carry what was typed, what is said of it and the readings
 * offered; {@link club.emberwell.web.frame.ErrorPages} tells people of the problems the API tells
 * programs.
 */
package club.emberwell.web.frame;
