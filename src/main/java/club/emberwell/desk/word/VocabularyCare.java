package club.emberwell.desk.word;

import club.emberwell.bench.StoredJson;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogChange;
import club.emberwell.catalog.store.CatalogRevision;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.CautionCare;
import club.emberwell.catalog.store.Deed;
import club.emberwell.catalog.store.MergeCare;
import club.emberwell.catalog.store.TermCare;
import club.emberwell.catalog.store.TermDraft;
import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.DeskAccess;
import club.emberwell.entry.FieldChange;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * What moderators do to the words of the club. Each deed is checked for the role, kept in the
 * history of its term under the person's id, and written into the log.
 */
@ApplicationScoped
public class VocabularyCare {
  private static final String TERM = "term";
  private static final String CAUTION = "caution";

  private final CatalogService catalog;
  private final TermCare terms;
  private final MergeCare merges;
  private final CautionCare cautions;
  private final Members members;

  VocabularyCare(
      CatalogService catalog,
      TermCare terms,
      MergeCare merges,
      CautionCare cautions,
      Members members) {
    this.catalog = catalog;
    this.terms = terms;
    this.merges = merges;
    this.cautions = cautions;
    this.members = members;
  }

  /** Words that wait to be filed, see {@link CatalogService#waiting}. */
  @Transactional
  public Slice<Unfiled> waiting(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return catalog.waiting(part);
  }

  /** Files a waiting text to a term, of which it becomes a spelling. */
  @Transactional
  public CatalogChange file(Actor actor, UUID text, String slug, String why) {
    Deed deed = deed(actor, or(why, "The same thing."));
    Unfiled word = catalog.unfiled(text).orElseThrow(() -> new EntryUnknown("waiting text"));
    String meant = meant(word.kind(), "/term", slug);
    return terms.file(text, meant, deed.as("file-word", "term", meant));
  }

  /** Makes a new term, and files a waiting text to it where one is named. */
  @Transactional
  public CatalogChange add(
      Actor actor, TermKind kind, String slug, TermDraft draft, UUID text, String why) {
    Deed deed = deed(actor, or(why, "Missing from the list."));
    TermDraft placed = below(kind, draft);
    CatalogChange change = terms.add(kind, slug, placed, deed.as("add", "label", draft.label()));
    if (text != null) {
      Unfiled waiting = catalog.unfiled(text).orElseThrow(() -> new EntryUnknown("waiting text"));
      boolean isLabel = same(waiting.written(), draft.label()) || same(waiting.written(), slug);
      if (isLabel) {
        terms.settle(text, slug, deed);
      } else {
        change = terms.file(text, slug, deed);
      }
    }
    return change;
  }

  /** The slug of a living term, by its slug, its label or any spelling. */
  private String meant(TermKind kind, String pointer, String text) {
    String typed = text == null ? "" : text.strip();
    return catalog
        .vocabulary()
        .term(kind, typed)
        .or(() -> catalog.vocabulary().resolve(kind, typed).term())
        .map(Term::slug)
        .orElseThrow(
            () ->
                new EntryRefused(
                    RemarkId.TERM_UNKNOWN, pointer, "There is no such term in the list."));
  }

  /** The draft with its wider term by slug, where a label or a spelling names it. */
  private TermDraft below(TermKind kind, TermDraft draft) {
    if (draft.parent() == null) {
      return draft;
    }
    return draft.below(meant(kind, "/parent", draft.parent()));
  }

  private boolean same(String one, String other) {
    Folding folding = catalog.vocabulary().folding();
    return folding.fold(one).equals(folding.fold(other));
  }

  /** Lays a waiting text aside. */
  @Transactional
  public void dismiss(Actor actor, UUID text, String why) {
    terms.dismiss(text, deed(actor, why).as("dismiss-word"));
  }

  /** Changes what is said about a term. */
  @Transactional
  public CatalogChange edit(
      Actor actor, TermKind kind, String slug, int version, TermDraft draft, String why) {
    Deed deed = deed(actor, why);
    return terms.edit(kind, slug, version, below(kind, draft), deed.as("edit"));
  }

  /**
   * Adds a spelling.
   *
   * @param evenIfAmbiguous true where it is meant to stand for several terms
   */
  @Transactional
  public CatalogChange addSpelling(
      Actor actor, TermKind kind, String slug, String text, boolean evenIfAmbiguous, String why) {
    Deed deed = deed(actor, or(why, "Another spelling."));
    return terms.addSynonym(
        kind, slug, text, evenIfAmbiguous, deed.as("add-spelling", "text", text));
  }

  @Transactional
  public CatalogChange removeSpelling(
      Actor actor, TermKind kind, String slug, String text, String why) {
    Deed deed = deed(actor, why);
    return terms.removeSynonym(kind, slug, text, deed.as("remove-spelling", "text", text));
  }

  /** Makes one term redirect to another, for ever or until it is undone. */
  @Transactional
  public CatalogChange merge(Actor actor, TermKind kind, String loser, String winner, String why) {
    Deed deed = deed(actor, why);
    String into = meant(kind, "/into", winner);
    return merges.merge(kind, loser, into, deed.as("merge", "into", into));
  }

  /** Makes a merged term exactly what it was. */
  @Transactional
  public CatalogChange undoMerge(Actor actor, TermKind kind, String loser, String why) {
    return merges.undo(kind, loser, deed(actor, why).as("undo-merge"));
  }

  /** The living term that a text names, by its slug, its label or any spelling. */
  public Term named(Actor actor, TermKind kind, String pointer, String text) {
    return term(actor, kind, meant(kind, pointer, text));
  }

  /** The term of exactly this slug, merged or not. */
  public Term term(Actor actor, TermKind kind, String slug) {
    DeskAccess.moderates(actor);
    return catalog.vocabulary().term(kind, slug).orElseThrow(() -> new EntryUnknown(kind.code()));
  }

  /** What happened to a term, newest first. */
  @Transactional
  public Slice<Change> termHistory(Actor actor, TermKind kind, String slug, Part part) {
    DeskAccess.moderates(actor);
    return history(TERM, id(kind, slug), part);
  }

  /** What happened to a caution, newest first; everybody may read it. */
  @Transactional
  public Slice<Change> cautionHistory(String id, Part part) {
    cautions.one(id);
    return history(CAUTION, id, part);
  }

  /** One change with the person's name of today. */
  public record Change(CatalogRevision revision, String by, List<FieldChange> differences) {}

  private Slice<Change> history(String subject, String id, Part part) {
    return catalog.history(subject, id, part).all(this::changes);
  }

  private List<Change> changes(List<CatalogRevision> found) {
    List<UUID> people =
        found.stream().map(CatalogRevision::by).filter(Objects::nonNull).distinct().toList();
    Map<UUID, String> names = members.labels(people);
    return found.stream()
        .map(
            r ->
                new Change(
                    r,
                    r.by() == null ? r.who() : names.get(r.by()),
                    StateDifference.between(r.before(), r.after())))
        .toList();
  }

  /**
   * What a proposed caution changes, field by field.
   *
   * @param before null for a new one
   */
  public List<FieldChange> differences(CautionRule before, CautionRule after) {
    return StateDifference.between(
        before == null ? null : StoredJson.map(before), StoredJson.map(after));
  }

  /** Every caution with its standing. */
  @Transactional
  public List<CautionCare.Standing> cautions(Actor actor) {
    DeskAccess.moderates(actor);
    return cautions.all();
  }

  @Transactional
  public CautionCare.Standing caution(Actor actor, String id) {
    DeskAccess.signedIn(actor);
    return cautions.one(id);
  }

  /** Asks for a caution's removal; a second moderator has to confirm it. */
  @Transactional
  public void proposeRemoval(Actor actor, String id, String why) {
    cautions.proposeRemoval(id, deed(actor, why).as("propose-removal"));
  }

  @Transactional
  public void confirmRemoval(Actor actor, String id, String why) {
    Deed deed = deed(actor, or(why, "Confirmed."));
    cautions.confirmRemoval(id, deed.as("confirm-removal"));
  }

  /** Lets a caution stand whose removal was proposed. */
  @Transactional
  public void keepStanding(Actor actor, String id, String why) {
    cautions.keepStanding(id, deed(actor, why).as("keep"));
  }

  /** Brings a removed caution back. */
  @Transactional
  public void restoreCaution(Actor actor, String id, String why) {
    cautions.restore(id, deed(actor, why).as("restore"));
  }

  private static Deed deed(Actor actor, String why) {
    DeskAccess.moderates(actor);
    return new Deed(DeskAccess.signedIn(actor), why);
  }

  private static String or(String why, String usual) {
    return why == null || why.isBlank() ? usual : why;
  }

  private static String id(TermKind kind, String slug) {
    return kind.code() + ":" + slug;
  }
}
