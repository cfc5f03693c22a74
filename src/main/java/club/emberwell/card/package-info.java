/**
 * Recipes as one-page job cards for whoever stands at the machine: what it is burned on and in, the
 * settings, the steps, what to heed, and what is gone through before the job.
 *
 * <p>Entry points: {@link club.emberwell.card.JobCards} puts a card together, {@link
 * club.emberwell.card.CardLinks} lets people without an account read one, {@link
 * club.emberwell.card.StandingLine} is what every card begins with.
 */
package club.emberwell.card;
