/**
 * Questions, answers, notices and watches over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.talk.QuestionResource}; {@link
 * club.emberwell.api.talk.NoticeResource}; {@link club.emberwell.api.talk.WatchResource}; {@link
 * club.emberwell.api.talk.InboxResource}.
 */
package club.emberwell.api.talk;
