package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.told.Told;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.UUID;

/** What was decided, for the pages of the items themselves: seen by authors and moderators only. */
@Named("verdicts")
@RequestScoped
public class LastWords {
  private static final int RECENT = 5;
  private static final int MOST = 30;

  private final Verdicts verdicts;
  private final Flags flags;
  private final Told told;
  private final CurrentActor current;
  private Told.News news;

  LastWords(Verdicts verdicts, Flags flags, Told told, CurrentActor current) {
    this.verdicts = verdicts;
    this.flags = flags;
    this.told = told;
    this.current = current;
  }

  /** The last word on an item, or null. */
  public Verdict on(String kind, String id) {
    return verdicts.lastWord(current.get(), EntryRef.of(kind, UUID.fromString(id))).orElse(null);
  }

  /** What was decided last about the reader's own entries, and all that is new. */
  public List<Verdict> getRecent() {
    return verdicts.mine(current.get(), shown(getNews().decisions()));
  }

  /** How far the reader has read both: asked once for a page. */
  public Told.News getNews() {
    if (news == null) {
      news = told.news(current.get());
    }
    return news;
  }

  /** What was answered last to what the reader flagged, and all that is new. */
  public List<Flag> getAnswers() {
    return flags.answered(current.get(), shown(getNews().answers()));
  }

  private static int shown(int fresh) {
    return Math.max(RECENT, Math.min(MOST, fresh));
  }
}
