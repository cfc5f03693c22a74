/**
 * A trial and a piece of work in words, in the units of the reader.
 *
 * <p>Entry points: {@link club.emberwell.web.trial.TrialText}; {@link
 * club.emberwell.web.trial.WorkText}.
 */
package club.emberwell.web.trial;
