package club.emberwell.entry;

import club.emberwell.bench.StoredJson;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.core.type.TypeReference;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The one life of what members write, and the only door through which entries change: each change
 * is a version with its revision, in the caller's transaction; the database adds the change row.
 */
@ApplicationScoped
public class EntryLife {
  /** Revisions of one entry that are read. */
  private static final int REVISIONS = 1000;

  private static final String LOOKED_AT = "Looked at.";

  private final EntryRepository entries;
  private final RevisionRepository revisions;
  private final EntryPolicy policy;
  private final List<Kind> kinds;

  EntryLife(
      EntryRepository entries,
      RevisionRepository revisions,
      EntryPolicy policy,
      @All List<Kind> kinds) {
    this.entries = entries;
    this.revisions = revisions;
    this.policy = policy;
    this.kinds = kinds;
  }

  /**
   * Whether this author's entry has come in already under an id of the client's; waits for whoever
   * is posting under it.
   *
   * @param id or null
   * @throws EntryRefused where the id belongs to another author or kind
   */
  @Transactional(Transactional.TxType.MANDATORY)
  public boolean isThere(UUID id, EntryKind kind, UUID author) {
    if (id == null) {
      return false;
    }
    entries.awaitTurn(id);
    Optional<EntryEntity> there = entries.findByIdOptional(id);
    if (there.filter(e -> e.kind() != kind || !e.memberId().equals(author)).isPresent()) {
      throw taken(kind);
    }
    return there.isPresent();
  }

  /** The same id came with other words. */
  public static EntryRefused taken(EntryKind kind) {
    String what = kind == EntryKind.REPORT ? "report" : "entry";
    return new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id belongs to another " + what + ".");
  }

  /** Begins an entry in the state the policy gives it. */
  @Transactional(Transactional.TxType.MANDATORY)
  public EntryEntity begin(Actor author, NewEntry made, Words words) {
    EntryState first = policy.firstState(author, made.kind());
    EntryEntity entry = new EntryEntity(made, author.memberId(), first, words.title());
    entries.persist(entry);
    note(entry, EntryAction.POSTED, Cause.of(author, made.at()), words);
    return entry;
  }

  /**
   * An entry of a file of its owner's: with every version it had. Words of earlier versions that
   * cannot be read any more are left out; their version stays.
   *
   * @param read how its kind reads words, as stored JSON
   * @throws EntryRefused where the newest words cannot be stored; nothing was stored then
   */
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public EntryEntity comeBack(
      Actor owner, EntryKind kind, Returned from, Function<String, Words> read) {
    Words newest = read.apply(from.written());
    NewEntry made = new NewEntry(from.id(), kind, null, Origin.HERE, from.createdAt());
    EntryEntity entry = new EntryEntity(made, owner.memberId(), EntryState.LIVE, newest.title());
    List<Words> words = words(from, newest, read);
    List<RevisionEntity> versions = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      Returned.Past past = from.past().get(i);
      if (i > 0) {
        boolean last = i == words.size() - 1;
        entry.change(past.state(), newest.title(), last ? from.updatedAt() : past.at());
      }
      Cause cause = new Cause(owner.memberId(), null, past.at(), past.reason());
      versions.add(new RevisionEntity(entry, past.action(), cause, words.get(i)));
    }
    entries.persistAndFlush(entry);
    revisions.persist(versions);
    return entry;
  }

  /** Of each version; the last that changed words has the newest, the first always has some. */
  private static List<Words> words(Returned from, Words newest, Function<String, Words> read) {
    List<Words> all = new ArrayList<>();
    boolean later = false;
    for (int i = from.past().size() - 1; i >= 0; i--) {
      String written = from.past().get(i).written();
      Words said = written == null ? null : later ? readable(written, read) : newest;
      later = later || written != null;
      all.add(0, said == null && i == 0 ? newest : said);
    }
    return all;
  }

  private static Words readable(String written, Function<String, Words> read) {
    try {
      return read.apply(written);
    } catch (EntryRefused e) {
      return null;
    }
  }

  /**
   * An entry held until the transaction ends, so that versions are counted one by one.
   *
   * @param of the kinds it may be of
   */
  @Transactional(Transactional.TxType.MANDATORY)
  public EntryEntity locked(Set<EntryKind> of, UUID id) {
    return find(of, id)
        .orElseThrow(
            () -> new EntryUnknown(of.size() == 1 ? of.iterator().next().code() : "entry"));
  }

  /** The same, empty where there is none. */
  @Transactional(Transactional.TxType.MANDATORY)
  public Optional<EntryEntity> find(Set<EntryKind> of, UUID id) {
    return entries.locked(id).filter(entry -> of.contains(entry.kind()));
  }

  /**
   * An entry its author or a moderator is about to write anew.
   *
   * @param version the change is based on
   * @throws EntryChanged where somebody else changed it meanwhile
   */
  @Transactional(Transactional.TxType.MANDATORY)
  public EntryEntity editable(Actor actor, Set<EntryKind> of, UUID id, int version) {
    EntryEntity entry = locked(of, id);
    EntryAccess.edit(actor, entry);
    based(entry, version);
    return entry;
  }

  private static void based(EntryEntity entry, Integer version) {
    if (version != null && entry.version() != version) {
      throw new EntryChanged(entry.version());
    }
  }

  /** The same for what only its author may do; null = whatever the version. */
  @Transactional(Transactional.TxType.MANDATORY)
  public EntryEntity own(Actor actor, Set<EntryKind> of, UUID id, Integer version) {
    EntryEntity entry = locked(of, id);
    EntryAccess.own(actor, entry);
    based(entry, version);
    return entry;
  }

  /** A new version with these words. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void rewritten(EntryEntity entry, Words words, EntryAction action, Cause cause) {
    entry.change(entry.state(), words.title(), cause.at());
    note(entry, action, cause, words);
  }

  /** A new version with the same words: something that belongs to the entry changed. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void touched(EntryEntity entry, EntryAction action, Cause cause) {
    entry.change(entry.state(), entry.title(), cause.at());
    note(entry, action, cause, null);
  }

  /** Takes one's own entry back; it stays in the history. A second time does nothing. */
  @Transactional
  public void withdraw(Actor actor, Set<EntryKind> of, UUID id, Integer version) {
    EntryEntity entry = own(actor, of, id, null);
    if (entry.state() == EntryState.WITHDRAWN) {
      return;
    }
    if (entry.state() == EntryState.REMOVED) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "A moderator has removed " + entry.kind().said() + ".");
    }
    based(entry, version);
    move(entry, EntryState.WITHDRAWN, EntryAction.WITHDRAWN, Cause.now(actor, null));
  }

  /**
   * Decides about an entry; deciding what is so already does nothing.
   *
   * @param reason for the author; may be left out only where it is let appear
   * @throws EntryForbidden for whoever is no moderator, for one's own entry and for one its author
   *     withdrew
   */
  @Transactional
  public void decide(Actor actor, EntryRef ref, Decision decision, String reason) {
    EntryEntity entry = locked(Set.of(ref.kind()), ref.id());
    EntryAccess.decide(actor, entry);
    boolean silent = decision == Decision.APPROVE && (reason == null || reason.isBlank());
    String why = silent ? LOOKED_AT : Reasons.needed(reason);
    enter(entry, decision, Cause.now(actor, why));
  }

  /** Holds what a rule saw something in. A rule is nobody: it acts under its own code. */
  @Transactional
  public void holdByRule(String rule, EntryRef ref, String reason) {
    EntryEntity entry = locked(Set.of(ref.kind()), ref.id());
    enter(entry, Decision.HOLD, Cause.ofRule(rule, reason));
  }

  private void enter(EntryEntity entry, Decision decision, Cause cause) {
    if (decision == Decision.APPROVE && entry.state() != EntryState.WAITING) {
      throw new EntryForbidden(EntryForbidden.Why.STATE, "It does not wait for approval any more.");
    }
    if (entry.state() == EntryState.WITHDRAWN) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "Its author has withdrawn " + entry.kind().said() + ".");
    }
    if (entry.state() != decision.state()) {
      move(entry, decision.state(), decision.action(), cause);
    }
  }

  /** Moves an entry to another state, with what follows elsewhere. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void move(EntryEntity entry, EntryState state, EntryAction action, Cause cause) {
    entry.change(state, entry.title(), cause.at());
    note(entry, action, cause, null);
    kind(entry.kind()).moved(entry, cause);
  }

  /**
   * Makes the words of an earlier version the newest again.
   *
   * @return the version the entry had
   */
  @Transactional
  public int bringBack(Actor actor, EntryRef ref, int version, String reason) {
    EntryEntity entry = locked(Set.of(ref.kind()), ref.id());
    String words =
        revisions.words(ref.id(), version).orElseThrow(() -> new EntryUnknown("version"));
    int now = entry.version();
    kind(ref.kind()).rewrite(actor, ref.id(), now, words, reason);
    return now;
  }

  /**
   * Every version of an entry, newest first.
   *
   * @param words the shape of what was written
   */
  @Transactional
  public <W> List<Revision<W>> history(UUID id, TypeReference<W> words) {
    return revisions.of(id, REVISIONS).stream()
        .map(revision -> revision.with(json -> StoredJson.read(json, words)))
        .toList();
  }

  /** The same of many entries, by the entry: one statement. */
  @Transactional
  public <W> Map<UUID, List<Revision<W>>> histories(Collection<UUID> ids, TypeReference<W> words) {
    return revisions.of(ids).stream()
        .collect(
            Collectors.groupingBy(
                RevisionRepository.Of::entry,
                Collectors.mapping(
                    of -> of.revision().with(json -> StoredJson.read(json, words)),
                    Collectors.toList())));
  }

  private Kind kind(EntryKind of) {
    return kinds.stream().filter(kind -> kind.kinds().contains(of)).findFirst().orElseThrow();
  }

  private void note(EntryEntity entry, EntryAction action, Cause cause, Words words) {
    revisions.persist(new RevisionEntity(entry, action, cause, words));
  }
}
