/**
 * Questions, answers, notices, and watches over what is new.
 *
 * <p>Entry points: {@link club.emberwell.talk.TalkService} asks, answers and notes; {@link
 * club.emberwell.talk.TalkFinder} finds; {@link club.emberwell.talk.Watches}, {@link
 * club.emberwell.talk.WatchMatcher} and {@link club.emberwell.talk.Inbox} tell members what is new;
 * {@link club.emberwell.talk.Markdown} makes their texts safe to show.
 */
package club.emberwell.talk;
