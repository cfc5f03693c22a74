package club.emberwell.exchange;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.Gone;
import club.emberwell.entry.Origin;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.talk.AcceptedAnswers;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Lets the invented members talk. What is there already stays as it is, edited or not. */
@ApplicationScoped
class ScenarioTalk {
  private final TalkService talk;
  private final AcceptedAnswers accepted;

  ScenarioTalk(TalkService talk, AcceptedAnswers accepted) {
    this.talk = talk;
    this.accepted = accepted;
  }

  /**
   * Adds what is missing.
   *
   * @param lines questions before their answers
   * @param people by handle
   * @param origin where they say they were made
   * @return how many entries were added
   */
  int load(List<ScenarioTalkLine> lines, Map<String, Actor> people, Origin origin) {
    int added = 0;
    for (ScenarioTalkLine line : lines) {
      Actor author = people.get(line.by());
      if (!isThere(author, line.id())) {
        add(author, line.posting(origin), line, people, lines);
        added++;
      }
    }
    return added;
  }

  /**
   * Adds the comments that are missing; none under a report that is gone.
   *
   * @return how many were added
   */
  int comment(List<ScenarioComment> lines, Map<String, Actor> people, Origin origin) {
    int added = 0;
    for (ScenarioComment line : lines) {
      Actor author = people.get(line.by());
      added += !isThere(author, line.id()) && isSaid(author, line, origin) ? 1 : 0;
    }
    return added;
  }

  private boolean isSaid(Actor author, ScenarioComment line, Origin origin) {
    try {
      talk.comment(author, line.report(), line.posting(origin));
      return true;
    } catch (EntryUnknown | Gone e) {
      return false;
    }
  }

  private boolean isThere(Actor author, UUID id) {
    try {
      talk.get(author, id);
      return true;
    } catch (EntryUnknown e) {
      return false;
    }
  }

  private void add(
      Actor author,
      TalkPosting posting,
      ScenarioTalkLine line,
      Map<String, Actor> people,
      List<ScenarioTalkLine> lines) {
    if (line.question() == null) {
      talk.post(author, kind(line), posting);
      return;
    }
    talk.answer(author, line.question(), posting);
    if (line.accepted()) {
      accepted.accept(asker(line, people, lines), line.question(), line.id(), null, line.at());
    }
  }

  private static EntryKind kind(ScenarioTalkLine line) {
    return line.kind().equals(EntryKind.NOTICE.code()) ? EntryKind.NOTICE : EntryKind.QUESTION;
  }

  private static Actor asker(
      ScenarioTalkLine answer, Map<String, Actor> people, List<ScenarioTalkLine> lines) {
    return lines.stream()
        .filter(line -> line.id().equals(answer.question()))
        .map(line -> people.get(line.by()))
        .findFirst()
        .orElseThrow();
  }
}
