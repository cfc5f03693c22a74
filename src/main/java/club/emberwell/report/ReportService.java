package club.emberwell.report;

import club.emberwell.bench.Machine;
import club.emberwell.bench.MachineLimits;
import club.emberwell.bench.Machines;
import club.emberwell.bench.StoredJson;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Reasons;
import club.emberwell.entry.Revision;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ReportRepository.Poster;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.WrittenHash;
import club.emberwell.report.reading.WrittenReport;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Posts, edits and withdraws reports. Every write is one transaction with its revision and change
 * row; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class ReportService implements Kind {
  public static final Set<EntryKind> REPORTS = Set.of(EntryKind.REPORT);

  private final ReportRepository reports;
  private final ReportReader reader;
  private final ReportWriter writer;
  private final EntryLife life;
  private final Machines machines;
  private final CatalogService catalog;

  ReportService(
      ReportRepository reports,
      ReportReader reader,
      ReportWriter writer,
      EntryLife life,
      Machines machines,
      CatalogService catalog) {
    this.reports = reports;
    this.reader = reader;
    this.writer = writer;
    this.life = life;
    this.machines = machines;
    this.catalog = catalog;
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
    UUID author = EntryAccess.signedIn(actor);
    WrittenReport written = posting.written();
    String hash = WrittenHash.of(written);
    if (life.isThere(posting.id(), EntryKind.REPORT, author)) {
      return same(posting.id(), hash);
    }
    Instant now = posting.at() == null ? Instant.now() : posting.at();
    checkRepeat(written.repeatOf());
    Optional<Machine> machine = machine(author, written);
    Interpretation read = read(written, machine.map(Machine::laser).orElse(null), posting.style());
    Poster poster = reports.poster(author, hash, now.minus(ReportLimits.DUPLICATE_WITHIN));
    read = withDuplicate(read, poster.sameWords());
    storable(read, written, posting.askFirst());
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    NewEntry made = new NewEntry(id, EntryKind.REPORT, null, posting.origin(), now);
    ReportEntity report = writer.add(actor, made, written, posting.style(), read);
    ReportNames names =
        new ReportNames(
            poster.number(),
            actor.handle(),
            machine.map(m -> m.standing().number()).orElse(null),
            machine.map(Machine::name).orElse(null),
            machine.map(Machine::model).orElse(null),
            0L,
            0L);
    return reader.made(report, names, read);
  }

  private StoredReport same(UUID id, String hash) {
    if (!reports.whole(id).orElseThrow().writtenHash().equals(hash)) {
      throw EntryLife.taken(EntryKind.REPORT);
    }
    return reader.whole(id, false);
  }

  /**
   * What a posting would be read as, with the same refusals as {@link #post} but nothing stored.
   */
  @Transactional
  public Interpretation preview(Actor actor, WrittenReport written, NumberStyle style) {
    UUID author = EntryAccess.signedIn(actor);
    Interpretation read =
        read(written, machine(author, written).map(Machine::laser).orElse(null), style);
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
    EntryAccess.signedIn(actor);
    StoredReport from = get(actor, original);
    if (from.snapshot().state() != EntryState.LIVE) {
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
    life.editable(actor, REPORTS, id, version);
    ReportEntity report = reports.whole(id).orElseThrow();
    WrittenReport written = posting.written().repeating(report.written().repeatOf());
    Interpretation read = read(written, laserOf(written, report), posting.style());
    storable(read, written, posting.askFirst());
    Cause cause = Cause.now(actor, Reasons.checked(reason));
    writer.rewrite(report, written, posting.style(), read, EntryAction.EDITED, cause);
    return reader.whole(id, false);
  }

  /** Takes one's own report back; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, REPORTS, id, version);
  }

  @Override
  public Set<EntryKind> kinds() {
    return REPORTS;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    NumberStyle style = reports.whole(id).orElseThrow().numberStyle();
    WrittenReport then = StoredJson.read(written, WrittenReportConverter.SHAPE);
    revise(actor, id, version, new Posting(null, then, style, Origin.HERE, null, false), reason);
  }

  /**
   * A report as far as the actor may see it.
   *
   * @throws EntryUnknown where it does not exist or must not be known
   * @throws Gone where it was public once
   */
  @Transactional
  public StoredReport get(Actor actor, UUID id) {
    return reader.visible(actor, id);
  }

  /** The actor's own latest reports of one test that still stand, newest first. */
  @Transactional
  public List<StoredReport> latest(Actor actor, int most) {
    return reader.latest(EntryAccess.signedIn(actor), most);
  }

  /** Models of machines to suggest: those that reports tell everybody of, and one's own. */
  @Transactional
  public List<String> machineModels(Actor actor) {
    return reports.models(EntryAccess.signedIn(actor), MachineLimits.MODELS_SUGGESTED);
  }

  /** Whether its author reported about the same material before. */
  @Transactional
  public boolean isKnownMaterial(UUID id) {
    return reports.isKnownMaterial(id);
  }

  /** Every version of a report, newest first; seen by whoever sees the report. */
  @Transactional
  public List<Revision<WrittenReport>> history(Actor actor, UUID id) {
    return reader.history(actor, id);
  }

  /** Live repeats of a report, oldest first. */
  @Transactional
  public List<UUID> repeats(Actor actor, UUID id) {
    return reader.repeats(actor, id);
  }

  /** How it came out for others who tried it. */
  @Transactional
  public TriedByOthers triedByOthers(UUID id) {
    Map<Effect, Integer> members = new EnumMap<>(Effect.class);
    reports
        .triedByOthers(id)
        .forEach(
            outcome ->
                members.merge(
                    Coded.of(Effect.class, outcome.effect()).orElseThrow(), 1, Integer::sum));
    return TriedByOthers.of(members);
  }

  private void checkRepeat(UUID original) {
    if (original == null) {
      return;
    }
    boolean live = reports.whole(original).filter(report -> report.entry().live()).isPresent();
    if (!live) {
      throw new EntryRefused(RemarkId.REPORT_UNKNOWN, "/repeatOf", "This report does not exist.");
    }
  }

  private Optional<Machine> machine(UUID author, WrittenReport written) {
    return written.machine() == null ? Optional.empty() : machines.find(author, written.machine());
  }

  private Laser laserOf(WrittenReport written, ReportEntity before) {
    return written.machine() != null && written.machine().equals(before.machineId())
        ? before.laser().toLaser()
        : machine(before.entry().memberId(), written).map(Machine::laser).orElse(null);
  }

  private Interpretation read(WrittenReport written, Laser machine, NumberStyle style) {
    return ReportInterpreter.read(written, machine, catalog.snapshot(), style);
  }

  private static Interpretation withDuplicate(Interpretation read, UUID other) {
    if (other == null) {
      return read;
    }
    List<Remark> remarks = new ArrayList<>(read.remarks());
    remarks.add(
        Remark.warning(
            ReportEntity.SAME_AS_BEFORE, "", "You posted the same before: " + other + "."));
    return read.withRemarks(remarks);
  }

  private static void storable(Interpretation read, WrittenReport written, boolean askFirst) {
    if (read.ban().isPresent()) {
      throw new ProhibitedWork(read.ban().get());
    }
    Remarks.refuse(read.remarks());
    List<Remark> open = askFirst ? read.unconfirmed(written.confirmed()) : List.of();
    if (!open.isEmpty()) {
      throw new EntryUnconfirmed(open);
    }
  }
}
