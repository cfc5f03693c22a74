/**
 * The site on a phone with a bad connection: an app, what waits on it, and what it opens offline.
 *
 * <p>Entry points: {@link club.emberwell.web.phone.AppFiles} hands out the manifest and the service
 * worker; {@link club.emberwell.web.phone.PhonePages} has the pages and the token for forms that
 * are sent later; {@link club.emberwell.web.phone.WhosePage} tells the phone whose a page is. All
 * else are the scripts {@code kept.js}, {@code drafts.js}, {@code outbox.js}, {@code pages.js},
 * {@code worker.js}, {@code phone.js} and {@code waiting.js} among the assets.
 */
package club.emberwell.web.phone;
