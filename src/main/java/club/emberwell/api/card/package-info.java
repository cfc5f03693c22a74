/** Job cards of recipes: for their owners, and for whoever has a link. */
package club.emberwell.api.card;
