/**
 * What those see who are no readers of pages: readers of feeds, search engines, password managers.
 *
 * <p>Entry points: {@link club.emberwell.web.outside.FeedPages} hands out feeds, whose entries
 * {@link club.emberwell.web.outside.FeedItems} puts into words; {@link
 * club.emberwell.web.outside.CrawlerFiles} says what there is and where not to look; {@link
 * club.emberwell.web.outside.WellKnown} has the addresses that are the same everywhere. What a page
 * says of itself is its {@link club.emberwell.web.frame.Preview}.
 */
package club.emberwell.web.outside;
