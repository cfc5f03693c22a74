package club.emberwell.catalog.store;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * What moderators do to cautions. Callers check the role; that two different persons remove a
 * caution is checked here, and that an edit does not weaken a prohibition by the back door.
 */
@ApplicationScoped
public class CautionCare {
  private final CatalogStore store;
  private final CautionRepository cautions;

  CautionCare(CatalogStore store, CautionRepository cautions) {
    this.store = store;
    this.cautions = cautions;
  }

  /**
   * A caution with its standing.
   *
   * @param removalAskedBy id of the member who proposed to remove it, or null
   */
  public record Standing(
      CautionRule rule,
      String origin,
      int version,
      boolean removed,
      UUID removalAskedBy,
      Instant removalAskedAt,
      String removalReason) {}

  /**
   * Refuses what {@link #add} and {@link #edit} would refuse, without changing anything.
   *
   * @param base version it is based on, 0 for a new caution
   */
  @Transactional
  public void check(CautionRule rule, int base) {
    CautionChecks.check(rule, store.read().vocabulary());
    if (base == 0) {
      if (cautions.findById(rule.id()) != null) {
        throw new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id was used before.");
      }
    } else {
      CautionEntity entity = standing(rule.id());
      CatalogStore.expect(entity.version, base);
      CautionChecks.checkNotWeaker(entity.toRule(), rule);
    }
  }

  /** Adds a caution of the club's own. */
  @Transactional
  public CatalogChange add(CautionRule rule, Deed deed) {
    store.lock();
    CautionChecks.check(rule, store.read().vocabulary());
    if (cautions.findById(rule.id()) != null) {
      throw new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id was used before.");
    }
    CautionEntity entity = CautionEntity.of(rule, Term.CLUB);
    entity.edited = true;
    cautions.persist(entity);
    keep(entity, null, deed);
    return changed(rule.scope());
  }

  /**
   * Replaces what a caution says. A prohibition keeps its weight and its scope: to lift it, have it
   * removed.
   */
  @Transactional
  public CatalogChange edit(CautionRule rule, int expectedVersion, Deed deed) {
    store.lock();
    CautionEntity entity = standing(rule.id());
    CatalogStore.expect(entity.version, expectedVersion);
    CautionChecks.check(rule, store.read().vocabulary());
    CautionRule was = entity.toRule();
    CautionChecks.checkNotWeaker(was, rule);
    Map<String, Object> before = entity.state();
    entity.rule = CatalogJson.map(rule);
    entity.edited = true;
    entity.version++;
    keep(entity, before, deed);
    Set<String> slugs = slugs(rule.scope());
    slugs.addAll(slugs(was.scope()));
    return store.changed(null, slugs, Set.of());
  }

  /** Asks for a caution's removal; it stands until somebody else confirms. */
  @Transactional
  public CatalogChange proposeRemoval(String id, Deed deed) {
    store.lock();
    CautionEntity entity = standing(id);
    if (entity.removalAskedBy != null) {
      throw new EntryRefused(RemarkId.REMOVAL_ASKED, "", "Its removal has been proposed already.");
    }
    return change(entity, deed, caution -> ask(caution, deed.by(), Instant.now(), deed.why()));
  }

  /** Removes a caution that somebody else proposed to remove. */
  @Transactional
  public CatalogChange confirmRemoval(String id, Deed deed) {
    store.lock();
    CautionEntity entity = proposed(id);
    if (entity.removalAskedBy.equals(deed.by())) {
      throw new EntryForbidden(
          EntryForbidden.Why.YOUR_OWN,
          "A second moderator has to confirm the removal of a caution.");
    }
    return change(
        entity,
        deed,
        caution -> {
          caution.removed = true;
          caution.edited = true;
        });
  }

  /** Lets a caution stand: turns down or takes back the proposal to remove it. */
  @Transactional
  public CatalogChange keepStanding(String id, Deed deed) {
    store.lock();
    return change(proposed(id), deed, caution -> ask(caution, null, null, null));
  }

  /** Brings a removed caution back. One moderator is enough to be more careful. */
  @Transactional
  public CatalogChange restore(String id, Deed deed) {
    store.lock();
    CautionEntity entity = cautions.findById(id);
    if (entity == null || !entity.removed) {
      throw new EntryUnknown("removed caution");
    }
    return change(
        entity,
        deed,
        caution -> {
          caution.removed = false;
          ask(caution, null, null, null);
        });
  }

  /** Every caution with its standing, removed ones too, by id. */
  @Transactional
  public List<Standing> all() {
    return cautions.list("order by id").stream().map(CautionCare::view).toList();
  }

  /** One caution with its standing. */
  @Transactional
  public Standing one(String id) {
    CautionEntity entity = cautions.findById(id);
    if (entity == null) {
      throw new EntryUnknown("caution");
    }
    return view(entity);
  }

  private static Standing view(CautionEntity entity) {
    return new Standing(
        entity.toRule(),
        entity.origin,
        entity.version,
        entity.removed,
        entity.removalAskedBy,
        entity.removalAskedAt,
        entity.removalReason);
  }

  /** The next version, with the one before in its history. */
  private CatalogChange change(CautionEntity entity, Deed deed, Consumer<CautionEntity> how) {
    Map<String, Object> before = entity.state();
    how.accept(entity);
    entity.version++;
    keep(entity, before, deed);
    return changed(entity.toRule().scope());
  }

  private static void ask(CautionEntity entity, UUID who, Instant at, String why) {
    entity.removalAskedBy = who;
    entity.removalAskedAt = at;
    entity.removalReason = why;
  }

  private CautionEntity standing(String id) {
    CautionEntity entity = cautions.findById(id);
    if (entity == null || entity.removed) {
      throw new EntryUnknown("caution");
    }
    return entity;
  }

  private CautionEntity proposed(String id) {
    CautionEntity entity = standing(id);
    if (entity.removalAskedBy == null) {
      throw new EntryUnknown("proposal to remove this caution");
    }
    return entity;
  }

  private CatalogChange changed(CautionScope scope) {
    return store.changed(null, slugs(scope), Set.of());
  }

  private Set<String> slugs(CautionScope scope) {
    Vocabulary vocabulary = store.read().vocabulary();
    Set<String> slugs = new TreeSet<>();
    scope.materials().forEach(m -> slugs.addAll(vocabulary.descendants(TermKind.MATERIAL, m)));
    scope.coatings().forEach(c -> slugs.addAll(vocabulary.descendants(TermKind.COATING, c)));
    return slugs;
  }

  private void keep(CautionEntity entity, Map<String, Object> before, Deed deed) {
    store.record("caution", entity.id, entity.version, before, entity.state(), deed);
  }
}
