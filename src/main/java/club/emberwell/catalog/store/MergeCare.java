package club.emberwell.catalog.store;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Merging terms that mean the same. The loser keeps its row, its words and its cautions and
 * redirects to the winner for ever; nothing else moves in the database, so an undo is exact.
 */
@ApplicationScoped
public class MergeCare {
  private final CatalogStore store;
  private final MergeRepository merges;
  private final TermRepository terms;

  MergeCare(CatalogStore store, MergeRepository merges, TermRepository terms) {
    this.store = store;
    this.merges = merges;
    this.terms = terms;
  }

  /** What {@link #merge} would move, without moving it. */
  @Transactional
  public MergePreview preview(TermKind kind, String loser, String winner) {
    Catalog before = store.read();
    Catalog after = imagined(kind, loser, winner);
    checkApart(kind, loser, winner, before.vocabulary());
    Term from = before.vocabulary().term(kind, loser).orElseThrow();
    Term to = before.vocabulary().term(kind, winner).orElseThrow();
    List<CautionRule> lost = rules(before, kind, loser);
    List<CautionRule> gained = rules(after, kind, winner);
    List<CautionRule> had = List.copyOf(lost);
    lost.removeAll(gained);
    gained.removeAll(had);
    List<String> spellings = new ArrayList<>(from.synonyms());
    spellings.add(0, from.label());
    return new MergePreview(
        from, to, before.vocabulary().children(kind, loser), spellings, gained, lost);
  }

  private static List<CautionRule> rules(Catalog catalog, TermKind kind, String slug) {
    return new ArrayList<>(
        catalog.cautions().forTerm(kind, slug).stream().map(Caution::rule).toList());
  }

  /** What words would mean after a merge. */
  @Transactional
  public Vocabulary merged(TermKind kind, String loser, String winner) {
    return imagined(kind, loser, winner).vocabulary();
  }

  private Catalog imagined(TermKind kind, String loser, String winner) {
    return store.withTerms(
        store.allTerms().stream()
            .map(t -> t.kind() == kind && t.slug().equals(loser) ? t.mergedInto(winner) : t)
            .toList());
  }

  /** Makes one term redirect to another; refused where that would lift a prohibition. */
  @Transactional
  public CatalogChange merge(TermKind kind, String loser, String winner, Deed deed) {
    store.lock();
    Catalog before = store.read();
    checkApart(kind, loser, winner, before.vocabulary());
    BanGuard.check(kind, loser, before, imagined(kind, loser, winner));
    TermEntity entity = store.living(kind, loser);
    MergeEntity merge = new MergeEntity();
    merge.id = UUID.randomUUID();
    merge.kind = kind.code();
    merge.loser = loser;
    merge.winner = winner;
    merge.mapping = mapping(entity, before.vocabulary());
    merges.persist(merge);
    Term was = store.view(entity);
    entity.replacedBy = winner;
    entity.deprecated = true;
    entity.edited = true;
    entity.version++;
    keep(entity, was, deed);
    return changed(kind, loser, winner, before.vocabulary());
  }

  private static Map<String, Object> mapping(TermEntity loser, Vocabulary vocabulary) {
    TermKind kind = Coded.of(TermKind.class, loser.kind).orElseThrow();
    Map<String, Object> mapping = new HashMap<>();
    mapping.put("deprecated", loser.deprecated);
    mapping.put("edited", loser.edited);
    mapping.put(
        "children", vocabulary.children(kind, loser.slug).stream().map(Term::slug).toList());
    mapping.put("content", vocabulary.contentHash());
    return mapping;
  }

  /** Takes a merge back: the loser is again exactly what it was. */
  @Transactional
  public CatalogChange undo(TermKind kind, String loser, Deed deed) {
    store.lock();
    MergeEntity merge = entity(kind, loser);
    Vocabulary before = store.read().vocabulary();
    TermEntity entity = terms.findById(TermEntity.id(kind, loser));
    Term was = store.view(entity);
    entity.replacedBy = null;
    entity.deprecated = (Boolean) merge.mapping.get("deprecated");
    entity.edited = (Boolean) merge.mapping.get("edited");
    entity.version++;
    merge.undoneAt = Instant.now();
    keep(entity, was, deed);
    return changed(kind, loser, merge.winner, before);
  }

  private MergeEntity entity(TermKind kind, String loser) {
    return merges
        .find("kind = ?1 and loser = ?2 and undoneAt is null", kind.code(), loser)
        .firstResultOptional()
        .orElseThrow(() -> new EntryUnknown("merge"));
  }

  private void checkApart(TermKind kind, String loser, String winner, Vocabulary vocabulary) {
    store.living(kind, loser);
    store.living(kind, winner);
    if (vocabulary.descendants(kind, loser).contains(winner)) {
      throw new EntryRefused(
          RemarkId.MERGE_INTO_ITSELF,
          "/winner",
          "The term to keep is below the other one. Merge the other way round, or move it first.");
    }
  }

  private CatalogChange changed(TermKind kind, String loser, String winner, Vocabulary before) {
    Vocabulary after = store.read().vocabulary();
    Set<String> slugs = new TreeSet<>(Set.of(loser, winner));
    slugs.addAll(before.descendants(kind, loser));
    slugs.addAll(after.descendants(kind, loser));
    Term term = after.term(kind, loser).orElseThrow();
    Set<String> spellings = new TreeSet<>();
    term.synonyms().forEach(text -> spellings.add(store.folding().fold(text)));
    spellings.add(store.folding().fold(term.label()));
    spellings.add(store.folding().fold(term.slug()));
    return store.changed(kind, slugs, spellings);
  }

  private void keep(TermEntity entity, Term before, Deed deed) {
    terms.flush();
    store.record(
        "term",
        entity.id,
        entity.version,
        CatalogJson.map(before),
        CatalogJson.map(store.view(entity)),
        deed);
  }
}
