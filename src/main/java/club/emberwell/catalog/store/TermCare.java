package club.emberwell.catalog.store;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What moderators do to terms and spellings. Callers check the role. Everything is kept in the
 * history; every method says what changed, so that entries can be read again.
 *
 * <p>Throws {@link EntryRefused} with a remark per field, {@link EntryUnknown}, and {@link
 * club.emberwell.remark.EntryChanged} where somebody was quicker.
 */
@ApplicationScoped
public class TermCare {
  private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int SLUG_LENGTH = 60;

  private final CatalogStore store;
  private final TermRepository terms;
  private final SynonymRepository synonyms;
  private final UnfiledRepository unfiled;

  TermCare(
      CatalogStore store,
      TermRepository terms,
      SynonymRepository synonyms,
      UnfiledRepository unfiled) {
    this.store = store;
    this.terms = terms;
    this.synonyms = synonyms;
    this.unfiled = unfiled;
  }

  /**
   * Adds a term of the club's own.
   *
   * @param slug lower-case words with dashes, at most 60 characters; never used before
   */
  @Transactional
  public CatalogChange add(TermKind kind, String slug, TermDraft draft, Deed deed) {
    store.lock();
    if (slug == null || slug.length() > SLUG_LENGTH || !SLUG.matcher(slug).matches()) {
      throw new EntryRefused(
          RemarkId.SLUG_UNREADABLE, "/value", "An id is lower-case words with dashes.");
    }
    Vocabulary vocabulary = store.read().vocabulary();
    if (vocabulary.term(kind, slug).isPresent()) {
      throw new EntryRefused(RemarkId.SLUG_TAKEN, "/value", "This id was used before.");
    }
    draft.check(kind, slug, vocabulary);
    checkFree(vocabulary, kind, slug, draft.label(), "/label");
    TermEntity entity = TermEntity.of(drafted(kind, slug, draft));
    entity.edited = true;
    terms.persist(entity);
    keep(entity, null, deed);
    Set<String> spellings = new TreeSet<>();
    spellings.add(store.folding().fold(draft.label()));
    spellings.add(store.folding().fold(slug));
    return store.changed(kind, Set.of(slug), spellings);
  }

  private static Term drafted(TermKind kind, String slug, TermDraft draft) {
    return new Term(
        kind,
        slug,
        new Term.Words(draft.label(), List.of(), draft.note()),
        draft.parent(),
        draft.respondsAlike(),
        draft.hex(),
        new Term.Standing(draft.deprecated(), null, Term.CLUB, 1));
  }

  /** Changes label, parent, note, colour anchor or standing; the data files leave it alone then. */
  @Transactional
  public CatalogChange edit(
      TermKind kind, String slug, int expectedVersion, TermDraft draft, Deed deed) {
    store.lock();
    TermEntity entity = store.living(kind, slug);
    CatalogStore.expect(entity.version, expectedVersion);
    Catalog before = store.read();
    draft.check(kind, slug, before.vocabulary());
    if (!draft.label().equals(entity.label)) {
      checkFree(before.vocabulary(), kind, slug, draft.label(), "/label");
    }
    Term was = store.view(entity);
    entity.take(drafted(kind, slug, draft));
    entity.edited = true;
    entity.version++;
    keep(entity, was, deed);
    Catalog after = store.read();
    BanGuard.check(kind, slug, before, after);
    Set<String> spellings = new TreeSet<>();
    if (!was.label().equals(draft.label())) {
      spellings.add(store.folding().fold(was.label()));
      spellings.add(store.folding().fold(draft.label()));
    }
    return store.changed(kind, after.vocabulary().descendants(kind, slug), spellings);
  }

  /**
   * Adds a spelling.
   *
   * @param evenIfAmbiguous true where the text is meant to stand for several terms: it then matches
   *     none of them, and people are asked which one they mean
   */
  @Transactional
  public CatalogChange addSynonym(
      TermKind kind, String slug, String text, boolean evenIfAmbiguous, Deed deed) {
    store.lock();
    TermEntity entity = store.living(kind, slug);
    Term was = store.view(entity);
    String spelling = spelling(text);
    Vocabulary vocabulary = store.read().vocabulary();
    if (!evenIfAmbiguous) {
      checkFree(vocabulary, kind, slug, spelling, "/text");
    }
    Set<String> touched = new TreeSet<>(vocabulary.holders(kind, spelling));
    touched.add(slug);
    spell(entity, spelling);
    entity.version++;
    keep(entity, was, deed);
    return store.changed(kind, touched, Set.of(store.folding().fold(spelling)));
  }

  /** Takes a spelling back; entries that were read by it wait to be filed again. */
  @Transactional
  public CatalogChange removeSynonym(TermKind kind, String slug, String text, Deed deed) {
    store.lock();
    TermEntity entity = store.living(kind, slug);
    Term was = store.view(entity);
    SynonymEntity synonym =
        synonyms
            .find(entity.id, text)
            .filter(s -> !s.removed)
            .orElseThrow(() -> new EntryUnknown("spelling"));
    synonym.removed = true;
    synonym.edited = true;
    synonym.version++;
    entity.version++;
    keep(entity, was, deed);
    return store.changed(kind, Set.of(slug), Set.of(store.folding().fold(text)));
  }

  /** Files a waiting text to a term: the text becomes one of its spellings. */
  @Transactional
  public CatalogChange file(UUID unfiledId, String slug, Deed deed) {
    store.lock();
    UnfiledEntity text = waiting(unfiledId);
    TermKind kind = Coded.of(TermKind.class, text.kind).orElseThrow();
    text.filedTo = slug;
    decide(text, Unfiled.FILED, deed);
    return addSynonym(kind, slug, text.written, false, deed.part());
  }

  /** Files a waiting text to a term that is spelled like it already. */
  @Transactional
  public void settle(UUID unfiledId, String slug, Deed deed) {
    store.lock();
    UnfiledEntity text = waiting(unfiledId);
    text.filedTo = slug;
    decide(text, Unfiled.FILED, deed);
  }

  /** Lays a waiting text aside: it names nothing that belongs into the list. */
  @Transactional
  public void dismiss(UUID unfiledId, Deed deed) {
    store.lock();
    decide(waiting(unfiledId), Unfiled.DISMISSED, deed);
  }

  private UnfiledEntity waiting(UUID id) {
    UnfiledEntity text = unfiled.findById(id);
    if (text == null || !text.state.equals(Unfiled.WAITING)) {
      throw new EntryUnknown("waiting text");
    }
    return text;
  }

  private void decide(UnfiledEntity text, String state, Deed deed) {
    var before = CatalogJson.map(new Decision(text.written, text.state, null));
    text.state = state;
    text.version++;
    var after = CatalogJson.map(new Decision(text.written, state, text.filedTo));
    store.record("unfiled", text.id.toString(), text.version, before, after, deed);
  }

  private record Decision(String written, String state, String filedTo) {}

  private void spell(TermEntity entity, String text) {
    SynonymEntity synonym =
        synonyms
            .find(entity.id, text)
            .orElseGet(() -> SynonymEntity.of(entity.id, text, Term.CLUB));
    synonym.removed = false;
    synonym.edited = true;
    synonyms.persist(synonym);
  }

  private String spelling(String text) {
    String stripped = text == null ? "" : text.strip();
    boolean unreadable =
        stripped.length() > CatalogLimits.TEXT
            || stripped.matches(".*\\p{Cntrl}.*")
            || store.folding().fold(stripped).isEmpty();
    if (unreadable) {
      throw new EntryRefused(
          RemarkId.SPELLING_UNREADABLE,
          "/text",
          "A spelling has letters or digits and at most "
              + CatalogLimits.TEXT
              + " characters in one line.");
    }
    return stripped;
  }

  private static void checkFree(
      Vocabulary vocabulary, TermKind kind, String slug, String text, String pointer) {
    Set<String> others = new TreeSet<>(vocabulary.holders(kind, text));
    others.remove(slug);
    if (!others.isEmpty()) {
      String names =
          others.stream()
              .map(other -> vocabulary.term(kind, other).map(Term::label).orElse(other))
              .collect(Collectors.joining(", "));
      throw new EntryRefused(
          RemarkId.SPELLING_TAKEN, pointer, "This text already means " + names + ".");
    }
  }

  private void keep(TermEntity entity, Term before, Deed deed) {
    terms.flush();
    store.record(
        "term",
        entity.id,
        entity.version,
        before == null ? null : CatalogJson.map(before),
        CatalogJson.map(store.view(entity)),
        deed);
  }
}
