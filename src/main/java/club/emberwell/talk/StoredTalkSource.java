package club.emberwell.talk;

import club.emberwell.search.talk.TalkSource;
import club.emberwell.search.talk.TalkText;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What is searched of the talk: one statement for the entries, one for their answers. */
@ApplicationScoped
class StoredTalkSource implements TalkSource {
  private final TalkRepository entries;

  StoredTalkSource(TalkRepository entries) {
    this.entries = entries;
  }

  @Override
  @Transactional
  public List<TalkText> byIds(Collection<UUID> ids) {
    return ids.isEmpty() ? List.of() : texts(entries.behind(ids));
  }

  @Override
  @Transactional
  public List<TalkText> liveAfter(long number, int most) {
    return texts(entries.liveAfter(number, most));
  }

  private List<TalkText> texts(List<TalkEntity> found) {
    if (found.isEmpty()) {
      return List.of();
    }
    Map<UUID, StringBuilder> answers = new HashMap<>();
    List<UUID> ids = found.stream().map(talk -> talk.entry().id()).toList();
    for (Object[] row : entries.answerTexts(ids)) {
      answers
          .computeIfAbsent((UUID) row[0], id -> new StringBuilder())
          .append("\n\n")
          .append((String) row[1]);
    }
    return found.stream().map(entry -> text(entry, answers.get(entry.entry().id()))).toList();
  }

  private static TalkText text(TalkEntity talk, StringBuilder answers) {
    TalkEntry entry = talk.toEntry("");
    WrittenTalk written = entry.written();
    Ties ties = written.ties();
    return new TalkText(
        entry.id(),
        talk.entry().number(),
        entry.kind(),
        written.title(),
        answers == null ? written.text() : written.text() + answers,
        entry.answers() > 0,
        new TalkText.About(
            ties.material(),
            ties.coating(),
            ties.source(),
            ties.process(),
            ties.machineModel(),
            ties.controllerVersion()));
  }
}
