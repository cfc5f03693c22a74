/** Ranges over the API. */
package club.emberwell.api.consensus;
