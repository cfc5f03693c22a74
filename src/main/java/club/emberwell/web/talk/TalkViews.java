package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.report.Words;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

/** Composes the pages of talk. */
@ApplicationScoped
class TalkViews {
  private final TieLabels labels;
  private final Words words;
  private final WorkBeside works;
  private final ShownPhotos photos;

  TalkViews(TieLabels labels, Words words, WorkBeside works, ShownPhotos photos) {
    this.labels = labels;
    this.words = words;
    this.works = works;
    this.photos = photos;
  }

  /**
   * A list of questions or notices.
   *
   * @param text what was looked for; empty = nothing
   * @param shown which of the lists it is
   */
  record Listing(List<EntryLine> entries, Pager pager, String text, Shown shown) {
    /** The lists beside this one, for the same words. */
    public List<Tab> getTabs() {
      return Stream.of(Shown.values())
          .map(list -> new Tab(list.label(!text.isEmpty()), list.address(text), list == shown))
          .toList();
    }

    public boolean isUnanswered() {
      return shown == Shown.UNANSWERED;
    }

    public String getPath() {
      return shown.path();
    }

    /** Where this list begins. */
    public String getStart() {
      return shown.address(text);
    }

    /** All questions with the same words. */
    public String getEverything() {
      return Shown.QUESTIONS.address(text);
    }

    /** Where the same is asked when nothing was found. */
    public String getAsk() {
      return AskPages.about(text);
    }
  }

  /** A list one can go to. */
  record Tab(String label, String href, boolean current) {}

  /**
   * A question with a page of its answers.
   *
   * @param open whether the reader may answer
   * @param known what members used for the work it is about
   * @param photos of the question and of these answers
   */
  record Thread(
      EntryView question,
      int count,
      List<EntryView> answers,
      Pager pager,
      boolean open,
      WorkBeside.Known known,
      Map<UUID, List<Photo>> photos) {
    /** Those of the question or of an answer. */
    public List<Photo> photosOf(EntryView entry) {
      return photos.getOrDefault(UUID.fromString(entry.at().id()), List.of());
    }
  }

  /**
   * An entry being written.
   *
   * @param words what the fields suggest; null for an answer or a comment
   */
  record Writing(String action, Form form, Words.Lists words) {}

  Listing list(Slice<TalkEntry> page, String text, Shown shown) {
    return new Listing(
        EntryLine.of(page.rows(), labels), Pager.of(page, shown.address(text)), text, shown);
  }

  Thread thread(TalkService.Thread thread, Actor actor) {
    TalkEntry question = thread.question();
    return new Thread(
        EntryView.of(question, actor, labels),
        question.answers(),
        thread.answers().rows().stream()
            .map(answer -> EntryView.answer(answer, question, actor, labels))
            .toList(),
        Pager.of(thread.answers(), question.path()),
        actor.signedIn() && question.isLive(),
        works.of(question.written().ties(), actor),
        photos.of(thread.ids()));
  }

  EntryView entry(TalkEntry entry, Actor actor) {
    return EntryView.of(entry, actor, labels);
  }

  /** An entry in its form. */
  Writing writing(EntryKind kind, String action, Form form) {
    return new Writing(action, form, EntryKind.REPLIES.contains(kind) ? null : words.lists());
  }

  Form editing(TalkEntry entry) {
    return TalkForm.edit(entry, labels);
  }
}
