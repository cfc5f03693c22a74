/** Searching reports over the API. */
package club.emberwell.api.search;
