package club.emberwell.report;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.Laser;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.VocabularyStep;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * Reads stored reports again when words were filed anew or the interpreter was mended. Only reports
 * that come out differently are written, each with a revision and a change row, in small
 * transactions so that the readers of the change rows are never held up for long. Two nodes doing
 * it at once do no harm.
 */
@ApplicationScoped
public class ReportRereading {
  private static final Logger LOG = Logger.getLogger(ReportRereading.class);
  private final ReportRepository reports;
  private final ReadingRepository readings;
  private final TrialRepository trials;
  private final ReportWriter writer;
  private final EntryLife life;
  private final CatalogService catalog;
  private volatile long readUpTo = -1;

  ReportRereading(
      ReportRepository reports,
      ReadingRepository readings,
      TrialRepository trials,
      ReportWriter writer,
      EntryLife life,
      CatalogService catalog) {
    this.reports = reports;
    this.readings = readings;
    this.trials = trials;
    this.writer = writer;
    this.life = life;
    this.catalog = catalog;
  }

  /** Costs one look at memory while the catalog stays as it is. */
  @Scheduled(every = "2s", delayed = "5s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void followCatalog() {
    Catalog now = catalog.snapshot();
    if (now.version() != readUpTo) {
      int changed = catchUp(now);
      readUpTo = now.version();
      if (changed > 0) {
        LOG.infof("%d reports read again with catalog version %d", changed, now.version());
      }
    }
  }

  /** Reads again whatever the catalog or the interpreter now reads differently; how many. */
  public int catchUp(Catalog now) {
    ReadingMark mark = QuarkusTransaction.requiringNew().call(readings::mark);
    if (mark.catalogVersion() >= now.version()
        && mark.interpreterVersion() == ReportInterpreter.VERSION) {
      return 0;
    }
    int changed = reinterpret(QuarkusTransaction.requiringNew().call(() -> affected(now, mark)));
    ReadingMark reached = new ReadingMark(now.version(), ReportInterpreter.VERSION);
    QuarkusTransaction.requiringNew().run(() -> readings.remember(reached));
    return changed;
  }

  private List<UUID> affected(Catalog now, ReadingMark mark) {
    Set<UUID> ids = new LinkedHashSet<>();
    if (mark.interpreterVersion() != ReportInterpreter.VERSION) {
      ids.addAll(readings.readByOthers(ReportInterpreter.VERSION));
    }
    for (WorkProperty property : WorkProperty.of(Shape.WORD)) {
      TermKind kind = property.value().vocabulary();
      for (Filed word : readings.words(property.code())) {
        String slug = VocabularyStep.slug(now.vocabulary(), now.colours(), kind, word.written());
        if (!Objects.equals(slug, word.slug())) {
          ids.addAll(readings.with(property.code(), word));
        }
      }
    }
    return new ArrayList<>(ids);
  }

  /** Reads these reports again with the catalog as it is; answers how many came out differently. */
  public int reinterpret(Collection<UUID> ids) {
    List<UUID> all = List.copyOf(ids);
    int changed = 0;
    for (int from = 0; from < all.size(); from += ReportLimits.READ_AGAIN_BATCH) {
      int to = Math.min(all.size(), from + ReportLimits.READ_AGAIN_BATCH);
      List<UUID> batch = all.subList(from, to);
      changed += QuarkusTransaction.requiringNew().call(() -> batch(batch));
    }
    return changed;
  }

  private int batch(List<UUID> ids) {
    Map<UUID, List<TrialEntity>> before = trials.of(ids);
    int changed = 0;
    // in one order everywhere, so that two nodes never wait for each other crosswise
    for (UUID id : ids.stream().sorted().toList()) {
      Optional<ReportEntity> report =
          life.find(ReportService.REPORTS, id).flatMap(entry -> reports.whole(entry.id()));
      if (report.isPresent() && again(report.get(), before.getOrDefault(id, List.of()))) {
        changed++;
      }
    }
    return changed;
  }

  private boolean again(ReportEntity report, List<TrialEntity> before) {
    Laser machine = report.machineId() == null ? null : report.laser().toLaser();
    Interpretation read =
        ReportInterpreter.read(report.written(), machine, catalog.snapshot(), report.numberStyle());
    if (read.ban().isPresent() && report.entry().live()) {
      Cause why = Cause.itself(read.ban().get().sentence());
      life.move(report.entry(), EntryState.HELD, EntryAction.HELD, why);
    }
    Interpretation kept = read.withRemarks(report.remarksWith(read.remarks()));
    if (!read.readable() || kept.sameAs(report.interpretation(before))) {
      report.stillRead();
      return false;
    }
    writer.rewrite(
        report,
        report.written(),
        report.numberStyle(),
        kept,
        EntryAction.READ_AGAIN,
        Cause.itself(null));
    return true;
  }
}
