package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Term;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Brings the data files into the database at every start: adds what is new, updates what the files
 * changed and no moderator did, deletes nothing. Reading the same files again changes nothing.
 */
@ApplicationScoped
public class CatalogLoader {
  /** Who the history names for changes that came with the data files. */
  public static final String WHO = "data files";

  /** Runs early: whatever else happens at a start may count on the catalog. */
  public static final int PRIORITY = 100;

  private static final Deed DEED = new Deed(null, "The data files changed.");

  private final CatalogStore store;
  private final TermRepository terms;
  private final SynonymRepository synonyms;
  private final CautionRepository cautions;

  CatalogLoader(
      CatalogStore store,
      TermRepository terms,
      SynonymRepository synonyms,
      CautionRepository cautions) {
    this.store = store;
    this.terms = terms;
    this.synonyms = synonyms;
    this.cautions = cautions;
  }

  @Transactional
  void atStart(@Observes @Priority(PRIORITY) StartupEvent event) {
    load(CatalogFiles.terms(), CatalogFiles.cautions());
  }

  /** Answers whether anything changed. */
  @Transactional
  boolean load(List<Term> fileTerms, List<CautionRule> fileCautions) {
    store.lock();
    Set<String> changed = new TreeSet<>();
    Map<String, TermEntity> known =
        terms.listAll().stream().collect(Collectors.toMap(t -> t.id, Function.identity()));
    fileTerms.stream()
        .filter(term -> loadTerm(term, known.get(TermEntity.id(term.kind(), term.slug()))))
        .forEach(term -> changed.add(term.slug()));
    Map<String, CautionEntity> rules =
        cautions.listAll().stream().collect(Collectors.toMap(c -> c.id, Function.identity()));
    fileCautions.stream()
        .filter(rule -> loadCaution(rule, rules.get(rule.id())))
        .forEach(rule -> changed.add(rule.id()));
    if (!changed.isEmpty()) {
      store.changed(null, changed, Set.of());
    }
    return !changed.isEmpty();
  }

  private boolean loadTerm(Term term, TermEntity known) {
    String hash = CatalogJson.hash(term);
    if (known == null) {
      TermEntity entity = TermEntity.of(term);
      entity.fileHash = hash;
      terms.persist(entity);
      distinct(term)
          .forEach(text -> synonyms.persist(SynonymEntity.of(entity.id, text, term.origin())));
      return true;
    }
    if (hash.equals(known.fileHash)) {
      return false;
    }
    Term was = store.view(known);
    known.fileHash = hash;
    if (!known.edited) {
      known.take(term);
      known.origin = term.origin();
    }
    respell(known, distinct(term));
    known.version++;
    terms.flush();
    Term is = store.view(known);
    store.record("term", known.id, known.version, CatalogJson.map(was), CatalogJson.map(is), DEED);
    return true;
  }

  private static Set<String> distinct(Term term) {
    return new HashSet<>(term.synonyms());
  }

  private void respell(TermEntity term, Set<String> texts) {
    Set<String> missing = new HashSet<>(texts);
    for (SynonymEntity synonym : synonyms.of(term.id)) {
      boolean inFile = missing.remove(synonym.text);
      boolean ours = synonym.origin.equals(Term.SHARED) && !synonym.edited;
      if (ours && synonym.removed == inFile) {
        synonym.removed = !inFile;
        synonym.version++;
      }
    }
    missing.forEach(text -> synonyms.persist(SynonymEntity.of(term.id, text, Term.SHARED)));
  }

  private boolean loadCaution(CautionRule rule, CautionEntity known) {
    String hash = CatalogJson.hash(rule);
    if (known == null) {
      CautionEntity entity = CautionEntity.of(rule, Term.SHARED);
      entity.fileHash = hash;
      cautions.persist(entity);
      return true;
    }
    if (hash.equals(known.fileHash)) {
      return false;
    }
    known.fileHash = hash;
    if (known.edited || known.removed) {
      return false;
    }
    Map<String, Object> before = known.state();
    known.rule = CatalogJson.map(rule);
    known.version++;
    store.record("caution", known.id, known.version, before, known.state(), DEED);
    return true;
  }
}
