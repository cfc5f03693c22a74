package club.emberwell.catalog.store;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.jboss.logging.Logger;

/**
 * The current catalog of this node. A change made here shows at once after its commit, one made on
 * another node within a second.
 */
@ApplicationScoped
public class CatalogService {
  private static final ListOrder WAITING = ListOrder.oldestFirst("words", CatalogLimits.PAGE);
  private static final ListOrder HISTORY = ListOrder.newestFirst("changes", CatalogLimits.PAGE);

  private static final Logger LOG = Logger.getLogger(CatalogService.class);

  private final CatalogStore store;
  private final UnfiledRepository unfiled;
  private final CatalogRevisionRepository revisions;
  private final AtomicBoolean unreachable = new AtomicBoolean();

  /** Rises with every change this node learned of. */
  private final AtomicLong changes = new AtomicLong();

  /** Up to which of them {@link #current} was read; whoever needs more waits for the reading. */
  private volatile long readUpTo = -1;

  private volatile Catalog current;

  CatalogService(
      CatalogStore store, UnfiledRepository unfiled, CatalogRevisionRepository revisions) {
    this.store = store;
    this.unfiled = unfiled;
    this.revisions = revisions;
  }

  /** Immutable; costs nothing unless this node changed the catalog since the last call. */
  public Catalog snapshot() {
    if (readUpTo < changes.get()) {
      reload();
    }
    return current;
  }

  public Vocabulary vocabulary() {
    return snapshot().vocabulary();
  }

  public Cautions cautions() {
    return snapshot().cautions();
  }

  private synchronized void reload() {
    long wanted = changes.get();
    if (readUpTo < wanted) {
      current = QuarkusTransaction.requiringNew().call(store::read);
      readUpTo = wanted;
    }
  }

  void afterChange(@Observes(during = TransactionPhase.AFTER_SUCCESS) CatalogChange change) {
    changes.incrementAndGet();
  }

  @Scheduled(
      every = "${emberwell.catalog.poll}",
      concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void poll() {
    try {
      long version = QuarkusTransaction.requiringNew().call(store::version);
      unreachable.set(false);
      if (current != null && version != current.version()) {
        changes.incrementAndGet();
        reload();
      }
    } catch (RuntimeException e) {
      // said once per outage; the snapshot at hand serves meanwhile
      if (!unreachable.getAndSet(true)) {
        LOG.warn("cannot look for changes of the catalog: " + e.getMessage());
      }
    }
  }

  /**
   * Keeps a text that matched no term for a moderator, in the caller's transaction: one row per
   * folded text, counted. A text without letters and digits is dropped.
   *
   * @param at when it was written
   */
  @Transactional
  public void queueUnfiled(TermKind kind, String written, Instant at) {
    String clean = written.replaceAll("\\p{Cntrl}+", " ").strip();
    if (clean.length() > CatalogLimits.TEXT) {
      clean = clean.substring(0, CatalogLimits.TEXT);
    }
    String folded = store.folding().fold(clean);
    if (!folded.isEmpty()) {
      unfiled.countOne(kind, clean, folded, at);
    }
  }

  /** What waits to be filed: the most written first by page, the longest waiting by cursor. */
  @Transactional
  public Slice<Unfiled> waiting(Part part) {
    Slice.Rows<UnfiledEntity> rows = part.byCursor() ? unfiled::oldest : unfiled::mostWritten;
    return Slice.read(part, WAITING, rows, word -> List.of(word.firstSeen, word.id))
        .map(UnfiledEntity::toUnfiled);
  }

  /** One text that waits, or did. */
  @Transactional
  public Optional<Unfiled> unfiled(UUID id) {
    return unfiled.findByIdOptional(id).map(UnfiledEntity::toUnfiled);
  }

  /**
   * What happened to a term ({@code kind:slug}) or a caution, newest first.
   *
   * @param subject see {@link CatalogRevision}
   */
  @Transactional
  public Slice<CatalogRevision> history(String subject, String id, Part part) {
    return Slice.read(
            part, HISTORY, place -> revisions.of(subject, id, place), was -> List.of(was.seq))
        .map(CatalogRevisionEntity::toRevision);
  }
}
