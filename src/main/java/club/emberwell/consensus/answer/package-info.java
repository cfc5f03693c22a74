/**
 * What the ranges of a work come to on one machine: a start, whole settings that worked, what to
 * try next.
 *
 * <p>Entry points: {@link club.emberwell.consensus.answer.Answer} and {@link
 * club.emberwell.consensus.answer.OnMyMachine}. Pure.
 */
package club.emberwell.consensus.answer;
