package club.emberwell.talk;

import club.emberwell.report.StoredChangeLog;
import club.emberwell.talk.TalkEntryRepository.LiveAnswers;
import club.emberwell.talk.TalkRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/**
 * The one door through which entries change: each change goes with its revision and its change row,
 * in the caller's transaction.
 */
@ApplicationScoped
class TalkWriter {
  private final TalkEntryRepository entries;
  private final TalkRevisionRepository revisions;
  private final StoredChangeLog changes;

  TalkWriter(
      TalkEntryRepository entries, TalkRevisionRepository revisions, StoredChangeLog changes) {
    this.entries = entries;
    this.revisions = revisions;
    this.changes = changes;
  }

  void add(TalkEntryEntity entry, WrittenTalk written, Cause cause) {
    entry.take(written, cause.at());
    entries.persistAndFlush(entry);
    note(entry, TalkAction.POSTED, cause);
    recount(entry);
  }

  void rewrite(TalkEntryEntity entry, WrittenTalk written, Cause cause) {
    entry.take(written, cause.at());
    note(entry, TalkAction.EDITED, cause);
  }

  void enter(TalkEntryEntity entry, TalkState state, TalkAction action, Cause cause) {
    entry.enter(state, cause.at());
    note(entry, action, cause);
    recount(entry);
  }

  void accept(TalkEntryEntity question, UUID answer, Cause cause) {
    question.accept(answer, cause.at());
    note(question, TalkAction.ACCEPTED, cause);
  }

  private void recount(TalkEntryEntity changed) {
    if (changed.questionId() == null) {
      return;
    }
    TalkEntryEntity question = entries.locked(changed.questionId()).orElseThrow();
    LiveAnswers live = entries.liveAnswers(question.id());
    question.count(live.count().intValue(), live.last());
    if (changed.state() != TalkState.LIVE) {
      question.forget(changed.id());
    }
  }

  private void note(TalkEntryEntity entry, TalkAction action, Cause cause) {
    revisions.persist(new TalkRevisionEntity(entry, action, cause));
    revisions.flush();
    changes.add(entry.kind().code(), entry.id());
  }
}
