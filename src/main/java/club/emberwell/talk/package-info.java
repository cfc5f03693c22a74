/**
 * Questions, answers and notices.
 *
 * <p>Entry points: {@link club.emberwell.talk.TalkService} asks, answers and notes; {@link
 * club.emberwell.talk.TalkFinder} finds; {@link club.emberwell.talk.Markdown} makes their texts
 * safe to show. What tells members of news stands in {@link club.emberwell.talk.watch}.
 */
package club.emberwell.talk;
