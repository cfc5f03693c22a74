package club.emberwell.report;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.CatalogService;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportRevisionEntity.Cause;
import club.emberwell.report.ReportWriter.Edit;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Posts, edits and withdraws reports. Every write is one transaction with its revision and change
 * row; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class ReportService {
  private final ReportRepository reports;
  private final ReportReader reader;
  private final ReportWriter writer;
  private final Machines machines;
  private final CatalogService catalog;
  private final ReportPolicy policy;

  ReportService(
      ReportRepository reports,
      ReportReader reader,
      ReportWriter writer,
      Machines machines,
      CatalogService catalog,
      ReportPolicy policy) {
    this.reports = reports;
    this.reader = reader;
    this.writer = writer;
    this.machines = machines;
    this.catalog = catalog;
    this.policy = policy;
  }

  /**
   * Stores a report.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   * @throws ProhibitedWork where the work takes no settings
   * @throws EntryUnconfirmed where implausible values must be confirmed first
   */
  @Transactional
  public StoredReport post(Actor actor, Posting posting) {
    UUID author = ReportAccess.signedIn(actor);
    Optional<ReportEntity> same = sameId(posting, author);
    if (same.isPresent()) {
      return reader.whole(same.get().id(), false);
    }
    Instant now = posting.at() == null ? Instant.now() : posting.at();
    WrittenReport written = posting.written();
    checkRepeat(written.repeatOf());
    Interpretation read = read(written, laserOf(author, written, null), posting.style());
    read = withDuplicate(read, author, written, now);
    storable(read, written, posting.askFirst());
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    ReportEntity report = new ReportEntity(id, author, posting.origin(), now);
    report.begin(policy.firstState(actor, read));
    writer.add(report, written, posting.style(), read, new Cause(author, now, null));
    return reader.whole(id, true);
  }

  /**
   * What a posting would be read as, with the same refusals as {@link #post} but nothing stored.
   */
  @Transactional
  public Interpretation preview(Actor actor, WrittenReport written, NumberStyle style) {
    UUID author = ReportAccess.signedIn(actor);
    Interpretation read = read(written, laserOf(author, written, null), style);
    storable(read, written, false);
    return read;
  }

  /**
   * Posts one's own trial of a report; what is not said is taken from it.
   *
   * @throws EntryUnknown where the original must not be known
   */
  @Transactional
  public StoredReport repeat(Actor actor, UUID original, Posting posting) {
    ReportAccess.signedIn(actor);
    StoredReport from = get(actor, original);
    if (from.snapshot().state() != ReportState.LIVE) {
      throw new EntryUnknown("report");
    }
    return post(actor, posting.with(Repeat.fill(posting.written(), posting.style(), from)));
  }

  /**
   * Writes a report anew. The machine's laser stays as it was unless another machine is named.
   *
   * @param version the version the change is based on
   * @param reason for readers of the history, or null
   * @throws EntryChanged where somebody else changed it meanwhile
   */
  @Transactional
  public StoredReport revise(Actor actor, UUID id, int version, Posting posting, String reason) {
    ReportEntity report = locked(id);
    ReportAccess.edit(actor, report);
    if (report.version() != version) {
      throw new EntryChanged(report.version());
    }
    WrittenReport written = posting.written().repeating(report.written().repeatOf());
    UUID author = report.memberId();
    Interpretation read = read(written, laserOf(author, written, report), posting.style());
    storable(read, written, posting.askFirst());
    Cause cause = new Cause(actor.memberId(), Instant.now(), Reasons.checked(reason));
    Edit edit = new Edit(RevisionAction.EDITED, cause);
    writer.rewrite(report, written, posting.style(), read, edit);
    return reader.whole(id, false);
  }

  /** Takes one's own report back; it stays in the history. A second time does nothing. */
  @Transactional
  public void withdraw(Actor actor, UUID id, Integer version) {
    ReportEntity report = locked(id);
    ReportAccess.own(actor, report);
    if (report.state() == ReportState.WITHDRAWN) {
      return;
    }
    if (report.state() == ReportState.REMOVED) {
      throw new EntryForbidden("A moderator has removed this report.");
    }
    if (version != null && report.version() != version) {
      throw new EntryChanged(report.version());
    }
    Cause cause = new Cause(actor.memberId(), Instant.now(), null);
    writer.enter(report, ReportState.WITHDRAWN, RevisionAction.WITHDRAWN, cause);
  }

  /**
   * A report as far as the actor may see it.
   *
   * @throws EntryUnknown where it does not exist or must not be known
   * @throws ReportGone where it was public once
   */
  @Transactional
  public StoredReport get(Actor actor, UUID id) {
    return reader.visible(actor, id);
  }

  /** The actor's own latest reports that still stand, newest first. */
  @Transactional
  public List<StoredReport> latest(Actor actor, int most) {
    return reader.latest(ReportAccess.signedIn(actor), most);
  }

  /** Every version of a report, newest first; seen by whoever sees the report. */
  @Transactional
  public List<Revision> history(Actor actor, UUID id) {
    return reader.history(actor, id);
  }

  /** Live repeats of a report, oldest first. */
  @Transactional
  public List<UUID> repeats(Actor actor, UUID id) {
    return reader.repeats(actor, id);
  }

  private ReportEntity locked(UUID id) {
    return reports.locked(id).orElseThrow(() -> new EntryUnknown("report"));
  }

  private Optional<ReportEntity> sameId(Posting posting, UUID author) {
    if (posting.id() == null) {
      return Optional.empty();
    }
    reports.awaitTurn(posting.id());
    Optional<ReportEntity> there = reports.findByIdOptional(posting.id());
    there.ifPresent(
        report -> {
          if (!report.memberId().equals(author)
              || !report.writtenHash().equals(WrittenHash.of(posting.written()))) {
            throw new EntryRefused(
                Remark.error(RemarkId.ID_TAKEN, "/id", "This id belongs to another report."));
          }
        });
    return there;
  }

  private void checkRepeat(UUID original) {
    if (original == null) {
      return;
    }
    boolean live =
        reports
            .findByIdOptional(original)
            .filter(report -> report.state() == ReportState.LIVE)
            .isPresent();
    if (!live) {
      throw new EntryRefused(
          Remark.error(RemarkId.REPORT_UNKNOWN, "/repeatOf", "There is no such report to repeat."));
    }
  }

  private Laser laserOf(UUID author, WrittenReport written, ReportEntity before) {
    if (written.machine() == null) {
      return null;
    }
    if (before != null && written.machine().equals(before.machineId())) {
      return before.laser().toLaser();
    }
    return machines.find(author, written.machine()).map(Machine::laser).orElse(null);
  }

  private Interpretation read(WrittenReport written, Laser machine, NumberStyle style) {
    return ReportInterpreter.read(written, machine, catalog.snapshot(), style);
  }

  private Interpretation withDuplicate(
      Interpretation read, UUID author, WrittenReport written, Instant now) {
    Optional<UUID> other =
        reports.sameWords(
            author, WrittenHash.of(written), now.minus(ReportLimits.DUPLICATE_WITHIN));
    if (other.isEmpty()) {
      return read;
    }
    List<Remark> remarks = new ArrayList<>(read.remarks());
    remarks.add(
        Remark.warning(
            ReportEntity.SAME_AS_BEFORE, "", "You posted the same before: " + other.get() + "."));
    return read.withRemarks(remarks);
  }

  private static void storable(Interpretation read, WrittenReport written, boolean askFirst) {
    if (read.ban().isPresent()) {
      throw new ProhibitedWork(read.ban().get());
    }
    if (!read.readable()) {
      throw new EntryRefused(read.remarks());
    }
    List<Remark> open = askFirst ? read.unconfirmed(written.confirmed()) : List.of();
    if (!open.isEmpty()) {
      throw new EntryUnconfirmed(open);
    }
  }
}
