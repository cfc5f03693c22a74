/**
 * Questions, answers, notices, watches, the inbox and feeds as pages.
 *
 * <p>Entry points: {@link club.emberwell.web.talk.AskPages}; {@link
 * club.emberwell.web.talk.NoticePages}; {@link club.emberwell.web.talk.EntryPages} changes what was
 * written; {@link club.emberwell.web.talk.InboxPages} and {@link
 * club.emberwell.web.talk.WatchPages}; {@link club.emberwell.web.outside.FeedPages} for readers of
 * feeds.
 */
package club.emberwell.web.talk;
