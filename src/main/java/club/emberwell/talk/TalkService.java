package club.emberwell.talk;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Cause;
import club.emberwell.entry.Entries;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Gone;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Reasons;
import club.emberwell.entry.Revision;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Asks, answers, announces and comments; {@link AcceptedAnswers} says which answer helped. Every
 * write is one transaction with its revision and change row; whatever is thrown, nothing was
 * stored.
 */
@ApplicationScoped
public class TalkService implements Kind {
  private static final ListOrder ANSWERS = ListOrder.oldestFirst("answers", TalkLimits.ANSWERS);
  private static final ListOrder COMMENTS = ListOrder.oldestFirst("comments", TalkLimits.COMMENTS);
  private static final UUID NONE_YET = new UUID(0, 0);

  static final Set<EntryKind> QUESTIONS = Set.of(EntryKind.QUESTION);
  private static final TypeReference<WrittenTalk> SHAPE = new TypeReference<>() {};

  private final TalkRepository entries;
  private final TalkChecks checks;
  private final EntryLife life;
  private final Entries shared;

  TalkService(TalkRepository entries, TalkChecks checks, EntryLife life, Entries shared) {
    this.entries = entries;
    this.checks = checks;
    this.life = life;
    this.shared = shared;
  }

  /**
   * An entry that was just written.
   *
   * @param created false where the same one was there already
   */
  public record Posted(TalkEntry entry, boolean created) {}

  /** A question with one page of its answers, the accepted one first. */
  public record Thread(TalkEntry question, Slice<TalkEntry> answers) {
    /** Of the question and the answers on this page. */
    public List<UUID> ids() {
      return Stream.concat(Stream.of(question), answers.rows().stream())
          .map(TalkEntry::id)
          .toList();
    }
  }

  /**
   * Stores a question or a notice.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Posted post(Actor actor, EntryKind kind, TalkPosting posting) {
    if (EntryKind.REPLIES.contains(kind)) {
      throw new IllegalArgumentException("needs what it is below: " + kind);
    }
    return store(actor, kind, null, posting);
  }

  /**
   * Stores an answer.
   *
   * @throws EntryUnknown where there is no such question
   */
  @Transactional
  public Posted answer(Actor actor, UUID question, TalkPosting posting) {
    EntryAccess.signedIn(actor);
    TalkEntry asked = get(actor, question);
    if (asked.kind() != EntryKind.QUESTION || !asked.isLive()) {
      throw new EntryUnknown("question");
    }
    return store(actor, EntryKind.ANSWER, question, posting);
  }

  /**
   * Stores a comment under a report.
   *
   * @throws EntryUnknown where there is no such report
   * @throws Gone where it was public once
   */
  @Transactional
  public Posted comment(Actor actor, UUID report, TalkPosting posting) {
    EntryAccess.signedIn(actor);
    if (!report(actor, report).live()) {
      throw new EntryUnknown("report");
    }
    return store(actor, EntryKind.COMMENT, report, posting);
  }

  /** A report as far as the actor may see it. */
  private Entry report(Actor actor, UUID id) {
    Entry report = shared.get(new EntryRef(EntryKind.REPORT, id));
    EntryAccess.see(actor, report.kind(), report.author().id(), report.state());
    return report;
  }

  private Posted store(Actor actor, EntryKind kind, UUID above, TalkPosting posting) {
    UUID author = EntryAccess.signedIn(actor);
    WrittenTalk written = checks.read(kind, posting.written());
    if (life.isThere(posting.id(), kind, author)) {
      TalkEntry there = entries.named(posting.id()).orElseThrow();
      if (!there.written().equals(written)) {
        throw EntryLife.taken(kind);
      }
      return new Posted(there, false);
    }
    Instant now = posting.at() == null ? Instant.now() : posting.at();
    keepPace(author, now);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    NewEntry made = new NewEntry(id, kind, above, posting.origin(), now);
    TalkEntity talk = new TalkEntity(life.begin(actor, made, TalkEntity.words(written)), written);
    entries.persistAndFlush(talk);
    recount(talk.entry());
    return new Posted(talk.toEntry(actor.handle()), true);
  }

  private void keepPace(UUID author, Instant now) {
    Instant since = now.minus(TalkLimits.PACE_WINDOW);
    if (entries.writtenBetween(author, since, now) >= TalkLimits.PACE) {
      String detail = "That is the limit for one day. Continue tomorrow.";
      throw new EntryRefused(RemarkId.PACE, "", detail);
    }
  }

  /**
   * What would be stored, with the same refusals as {@link #post} but nothing stored.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public WrittenTalk preview(Actor actor, EntryKind kind, WrittenTalk written) {
    EntryAccess.signedIn(actor);
    return checks.read(kind, written);
  }

  /**
   * Writes an entry anew.
   *
   * @param version the version the change is based on
   * @param reason for readers of the history, or null
   * @throws EntryChanged where somebody else changed it meanwhile
   */
  @Transactional
  public TalkEntry revise(Actor actor, UUID id, int version, WrittenTalk written, String reason) {
    EntryEntity entry = life.editable(actor, EntryKind.TALK, id, version);
    WrittenTalk read = checks.read(entry.kind(), written);
    Cause cause = Cause.now(actor, Reasons.checked(reason));
    entries.whole(id).orElseThrow().take(read);
    life.rewritten(entry, TalkEntity.words(read), EntryAction.EDITED, cause);
    return entries.named(id).orElseThrow();
  }

  /** Takes one's own entry back; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, EntryKind.TALK, id, version);
  }

  @Override
  public Set<EntryKind> kinds() {
    return EntryKind.TALK;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    revise(actor, id, version, StoredJson.read(written, SHAPE), reason);
  }

  /** A question counts the answers that can be seen. */
  @Override
  public void moved(EntryEntity entry, Cause cause) {
    recount(entry);
  }

  private void recount(EntryEntity changed) {
    if (changed.kind() != EntryKind.ANSWER) {
      return;
    }
    life.locked(QUESTIONS, changed.parentId());
    TalkEntity question = entries.whole(changed.parentId()).orElseThrow();
    TalkRepository.LiveAnswers live = entries.liveAnswers(changed.parentId());
    question.count(live.count().intValue(), live.last());
    if (!changed.live()) {
      question.forget(changed.id());
    }
  }

  /**
   * An entry as far as the actor may see it.
   *
   * @throws EntryUnknown where it does not exist or must not be known
   * @throws Gone where it was public once
   */
  @Transactional
  public TalkEntry get(Actor actor, UUID id) {
    TalkEntry entry = entries.named(id).orElseThrow(() -> new EntryUnknown("entry"));
    EntryAccess.see(actor, entry.kind(), entry.memberId(), entry.state());
    if (entry.kind() == EntryKind.COMMENT && !actor.is(entry.memberId())) {
      report(actor, entry.entry().parent());
    }
    return entry;
  }

  /** A question with one page of its answers: two statements. */
  @Transactional
  public Thread thread(Actor actor, UUID id, Part part) {
    return thread(actor, question(actor, id), part);
  }

  /**
   * A question with the page of its answers on which this one stands, the first where it is none of
   * them: three statements.
   */
  @Transactional
  public Thread threadAt(Actor actor, UUID id, UUID answer) {
    TalkEntry question = question(actor, id);
    long before = entries.answersBefore(question, answer, actor);
    return thread(actor, question, Part.page(Math.toIntExact(before / TalkLimits.ANSWERS)));
  }

  private TalkEntry question(Actor actor, UUID id) {
    TalkEntry question = get(actor, id);
    if (question.kind() != EntryKind.QUESTION) {
      throw new EntryUnknown("question");
    }
    return question;
  }

  private Thread thread(Actor actor, TalkEntry question, Part part) {
    UUID accepted = question.accepted() == null ? NONE_YET : question.accepted();
    return new Thread(
        question,
        Slice.read(
            part,
            ANSWERS,
            place -> entries.answers(question, actor, place),
            answer ->
                List.of(
                    accepted,
                    answer.id().equals(accepted) ? 0 : 1,
                    answer.createdAt(),
                    answer.id())));
  }

  /** One page of a report's comments, the oldest first: two statements. */
  @Transactional
  public Slice<TalkEntry> comments(Actor actor, UUID report, Part part) {
    report(actor, report);
    return Slice.read(
        part,
        COMMENTS,
        place -> entries.comments(report, actor, place),
        comment -> List.of(1, comment.createdAt(), comment.id()));
  }

  /** The page of them on which this one stands, the first where it is none: three statements. */
  @Transactional
  public Slice<TalkEntry> commentsAt(Actor actor, UUID report, UUID comment) {
    long before = entries.commentsBefore(report, comment, actor);
    return comments(actor, report, Part.page(Math.toIntExact(before / TalkLimits.COMMENTS)));
  }

  /** How many live comments a report has. */
  @Transactional
  public long commentCount(UUID report) {
    return entries.liveComments(report);
  }

  /** What is said about one report, the latest first, at most {@link TalkLimits#PAGE}. */
  @Transactional
  public List<TalkEntry> aboutReport(UUID report) {
    return entries.aboutReport(report, TalkLimits.PAGE);
  }

  /** Every version of an entry, newest first; seen by whoever sees the entry. */
  @Transactional
  public List<Revision<WrittenTalk>> history(Actor actor, UUID id) {
    get(actor, id);
    return life.history(id, SHAPE);
  }
}
