/**
 * Job cards as pages: {@link club.emberwell.web.card.CardPages} for a recipe's owner, {@link
 * club.emberwell.web.card.LinkedCardPages} for whoever has a link.
 */
package club.emberwell.web.card;
