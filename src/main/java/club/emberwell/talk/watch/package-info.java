/**
 * Kept searches and what they found: the inbox, feeds and the daily mail.
 *
 * <p>Entry points: {@link club.emberwell.talk.watch.Watches} keeps them, {@link
 * club.emberwell.talk.watch.WatchMatcher} holds what is new against them, {@link
 * club.emberwell.talk.watch.Inbox} lists the finds, {@link club.emberwell.talk.watch.WatchDigest}
 * mails them.
 */
package club.emberwell.talk.watch;
