/**
 * Job cards of recipes: {@link club.emberwell.api.card.CardResource} for their owners, {@link
 * club.emberwell.api.card.LinkedCardResource} for whoever has a link.
 */
package club.emberwell.api.card;
