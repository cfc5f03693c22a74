/**
 * The first page: finding settings. Its address is its whole state.
 *
 * <p>Entry points: {@link club.emberwell.web.find.FindPages}; {@link
 * club.emberwell.web.find.FindViews} composes the page from search, ranges and cautions.
 */
package club.emberwell.web.find;
