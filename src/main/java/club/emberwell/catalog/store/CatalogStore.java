package club.emberwell.catalog.store;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.ColourNaming;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The catalog in the database: reading it whole, locking it, and its history. */
@ApplicationScoped
class CatalogStore {
  private final CatalogStateRepository state;
  private final TermRepository terms;
  private final SynonymRepository synonyms;
  private final CautionRepository cautions;
  private final CatalogRevisionRepository revisions;
  private final Event<CatalogChange> changes;
  private final Folding folding = CatalogFiles.folding();
  private final Map<String, Integer> cssColours = CatalogFiles.cssColours();

  CatalogStore(
      CatalogStateRepository state,
      TermRepository terms,
      SynonymRepository synonyms,
      CautionRepository cautions,
      CatalogRevisionRepository revisions,
      Event<CatalogChange> changes) {
    this.state = state;
    this.terms = terms;
    this.synonyms = synonyms;
    this.cautions = cautions;
    this.revisions = revisions;
    this.changes = changes;
  }

  /** The number that rises with every change. */
  long version() {
    return state.version();
  }

  /** Makes the caller the only one who changes the catalog until its transaction ends. */
  void lock() {
    state.lock();
  }

  /** The whole catalog as this transaction sees it; three statements. */
  Catalog read() {
    state.flush();
    long version = version();
    Vocabulary vocabulary = new Vocabulary(allTerms(), folding);
    return catalog(version, vocabulary);
  }

  private Catalog catalog(long version, Vocabulary vocabulary) {
    List<CautionRule> rules =
        cautions.list("removed = false").stream().map(CautionEntity::toRule).toList();
    return new Catalog(
        version,
        vocabulary,
        new Cautions(vocabulary, rules),
        new ColourNaming(vocabulary, cssColours));
  }

  List<Term> allTerms() {
    Map<String, List<String>> texts =
        synonyms.list("removed = false order by text").stream()
            .collect(
                Collectors.groupingBy(
                    s -> s.termId, Collectors.mapping(s -> s.text, Collectors.toList())));
    return terms.list("order by id").stream()
        .map(entity -> entity.toTerm(texts.getOrDefault(entity.id, List.of())))
        .toList();
  }

  /** The catalog as it would be with other terms: for previews and checks. */
  Catalog withTerms(List<Term> others) {
    return catalog(version(), new Vocabulary(others, folding));
  }

  Term view(TermEntity entity) {
    return entity.toTerm(synonyms.texts(entity.id));
  }

  /** A term that may be changed: there, and not merged away. */
  TermEntity living(TermKind kind, String slug) {
    TermEntity entity = terms.findById(TermEntity.id(kind, slug));
    if (entity == null) {
      throw new EntryUnknown(kind.code());
    }
    if (entity.replacedBy != null) {
      throw new EntryRefused(
          RemarkId.TERM_MERGED,
          "/value",
          "%s was merged into %s. Edit that one, or undo the merge first."
              .formatted(entity.label, entity.replacedBy));
    }
    return entity;
  }

  static void expect(int version, int expected) {
    if (version != expected) {
      throw new EntryChanged(version);
    }
  }

  void record(
      String subject,
      String id,
      int version,
      Map<String, Object> before,
      Map<String, Object> after,
      Deed deed) {
    CatalogRevisionEntity revision = new CatalogRevisionEntity();
    revision.subject = subject;
    revision.subjectId = id;
    revision.version = version;
    revision.before = before;
    revision.after = after;
    revision.by = deed.by();
    revision.why = deed.why();
    revision.action = deed.action();
    revision.detail = deed.detail();
    revision.at = Instant.now();
    revisions.persist(revision);
  }

  /** Counts a change and tells everybody. */
  CatalogChange changed(TermKind kind, Set<String> slugs, Set<String> spellings) {
    state.flush();
    long version = state.countUp();
    CatalogChange change = new CatalogChange(version, kind, slugs, spellings);
    changes.fire(change);
    return change;
  }

  Folding folding() {
    return folding;
  }
}
