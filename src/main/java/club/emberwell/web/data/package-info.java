/**
 * Data to take along: {@link club.emberwell.web.data.DataPages} says how and hands out the files,
 * {@link club.emberwell.web.data.SearchFiles} makes one of a search.
 */
package club.emberwell.web.data;
