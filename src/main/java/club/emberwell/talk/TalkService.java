package club.emberwell.talk;

import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.talk.TalkRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Asks, answers and announces. Every write is one transaction with its revision and change row;
 * whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class TalkService {
  private final TalkEntryRepository entries;
  private final TalkRevisionRepository revisions;
  private final TalkWriter writer;
  private final TalkChecks checks;
  private final TalkPolicy policy;

  TalkService(
      TalkEntryRepository entries,
      TalkRevisionRepository revisions,
      TalkWriter writer,
      TalkChecks checks,
      TalkPolicy policy) {
    this.entries = entries;
    this.revisions = revisions;
    this.writer = writer;
    this.checks = checks;
    this.policy = policy;
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
  public Posted post(Actor actor, TalkKind kind, TalkPosting posting) {
    if (kind == TalkKind.ANSWER) {
      throw new IllegalArgumentException("an answer needs its question");
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
    TalkAccess.signedIn(actor);
    TalkEntry asked = get(actor, question);
    if (asked.kind() != TalkKind.QUESTION || !asked.isLive()) {
      throw new EntryUnknown("question");
    }
    return store(actor, TalkKind.ANSWER, question, posting);
  }

  private Posted store(Actor actor, TalkKind kind, UUID question, TalkPosting posting) {
    UUID author = TalkAccess.signedIn(actor);
    WrittenTalk written = checks.read(kind, posting.written());
    Optional<TalkEntry> same = sameId(posting.id(), author, kind, written);
    if (same.isPresent()) {
      return new Posted(same.get(), false);
    }
    Instant now = posting.at() == null ? Instant.now() : posting.at();
    keepPace(author, now);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    TalkEntryEntity entry = new TalkEntryEntity(id, kind, author, question, posting.origin(), now);
    entry.begin(policy.firstState(actor, kind, written));
    writer.add(entry, written, new Cause(author, now, null));
    return new Posted(entry.toEntry(actor.handle()), true);
  }

  private Optional<TalkEntry> sameId(UUID id, UUID author, TalkKind kind, WrittenTalk written) {
    Optional<TalkEntry> there = id == null ? Optional.empty() : entries.named(id);
    there.ifPresent(
        entry -> {
          boolean same =
              entry.memberId().equals(author)
                  && entry.kind() == kind
                  && entry.written().equals(written);
          if (!same) {
            throw new EntryRefused(
                Remark.error(RemarkId.ID_TAKEN, "/id", "This id belongs to another entry."));
          }
        });
    return there;
  }

  private void keepPace(UUID author, Instant now) {
    Instant since = now.minus(TalkLimits.PACE_WINDOW);
    if (entries.writtenSince(author, since) >= TalkLimits.PACE) {
      String detail = "That was a lot for one day; go on tomorrow.";
      throw new EntryRefused(Remark.error(RemarkId.PACE, "", detail));
    }
  }

  /**
   * What would be stored, with the same refusals as {@link #post} but nothing stored.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public WrittenTalk preview(Actor actor, TalkKind kind, WrittenTalk written) {
    TalkAccess.signedIn(actor);
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
    TalkEntryEntity entry = locked(id);
    TalkAccess.edit(actor, entry);
    if (entry.version() != version) {
      throw new EntryChanged(entry.version());
    }
    WrittenTalk read = checks.read(entry.kind(), written);
    Cause cause = new Cause(actor.memberId(), Instant.now(), TalkChecks.reason(reason));
    writer.rewrite(entry, read, cause);
    return entries.named(id).orElseThrow();
  }

  /** Takes one's own entry back; it stays in the history. A second time does nothing. */
  @Transactional
  public void withdraw(Actor actor, UUID id, Integer version) {
    TalkEntryEntity entry = locked(id);
    TalkAccess.own(actor, entry);
    if (entry.state() == TalkState.WITHDRAWN) {
      return;
    }
    if (entry.state() == TalkState.REMOVED) {
      throw new EntryForbidden("A moderator has removed this.");
    }
    if (version != null && entry.version() != version) {
      throw new EntryChanged(entry.version());
    }
    Cause cause = new Cause(actor.memberId(), Instant.now(), null);
    writer.enter(entry, TalkState.WITHDRAWN, TalkAction.WITHDRAWN, cause);
  }

  /**
   * Says which answer helped; only who asked can, and may change it.
   *
   * @param answer a live answer of this question, or null to say that none did
   * @param version of the question the choice is based on, or null
   */
  @Transactional
  public TalkEntry accept(Actor actor, UUID question, UUID answer, Integer version) {
    return accept(actor, question, answer, version, Instant.now());
  }

  /** The same for what was said elsewhere at another time. */
  @Transactional
  public TalkEntry accept(Actor actor, UUID question, UUID answer, Integer version, Instant at) {
    TalkEntryEntity asked = locked(question);
    if (asked.kind() != TalkKind.QUESTION) {
      throw new EntryUnknown("question");
    }
    TalkAccess.own(actor, asked);
    if (version != null && asked.version() != version) {
      throw new EntryChanged(asked.version());
    }
    if (answer != null) {
      entries
          .findByIdOptional(answer)
          .filter(a -> question.equals(a.questionId()) && a.state() == TalkState.LIVE)
          .orElseThrow(() -> new EntryUnknown("answer"));
    }
    if (!Objects.equals(asked.acceptedId(), answer)) {
      writer.accept(asked, answer, new Cause(actor.memberId(), at, null));
    }
    return entries.named(question).orElseThrow();
  }

  /**
   * An entry as far as the actor may see it.
   *
   * @throws EntryUnknown where it does not exist or must not be known
   * @throws TalkGone where it was public once
   */
  @Transactional
  public TalkEntry get(Actor actor, UUID id) {
    TalkEntry entry = entries.named(id).orElseThrow(() -> new EntryUnknown("entry"));
    TalkAccess.see(actor, entry.memberId(), entry.kind(), entry.state());
    return entry;
  }

  /** A question with one page of its answers: two statements. */
  @Transactional
  public Thread thread(Actor actor, UUID id, int page) {
    return thread(actor, question(actor, id), page);
  }

  /**
   * A question with the page of its answers on which this one stands, the first where it is none of
   * them: three statements.
   */
  @Transactional
  public Thread threadAt(Actor actor, UUID id, UUID answer) {
    TalkEntry question = question(actor, id);
    long before = entries.answersBefore(question, answer, actor);
    return thread(actor, question, Math.toIntExact(before / TalkLimits.ANSWERS));
  }

  private TalkEntry question(Actor actor, UUID id) {
    TalkEntry question = get(actor, id);
    if (question.kind() != TalkKind.QUESTION) {
      throw new EntryUnknown("question");
    }
    return question;
  }

  private Thread thread(Actor actor, TalkEntry question, int page) {
    return new Thread(
        question,
        Slice.read(
            page,
            TalkLimits.ANSWERS,
            (from, most) -> entries.answers(question, actor, from, most)));
  }

  /** Questions or notices, those asked, announced or answered last first: one statement. */
  @Transactional
  public Slice<TalkEntry> latest(TalkKind kind, boolean unanswered, int page) {
    return Slice.read(
        page, TalkLimits.PAGE, (from, most) -> entries.latest(kind, unanswered, from, most));
  }

  /** What is said about one report, the latest first, at most {@link TalkLimits#PAGE}. */
  @Transactional
  public List<TalkEntry> aboutReport(UUID report) {
    return entries.aboutReport(report, TalkLimits.PAGE);
  }

  /** Every version of an entry, newest first; seen by whoever sees the entry. */
  @Transactional
  public List<TalkRevision> history(Actor actor, UUID id) {
    get(actor, id);
    return revisions.of(id);
  }

  private TalkEntryEntity locked(UUID id) {
    return entries.locked(id).orElseThrow(() -> new EntryUnknown("entry"));
  }
}
