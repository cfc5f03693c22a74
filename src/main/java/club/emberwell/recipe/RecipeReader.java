package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.bench.StoredJson;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** Reads a recipe by the reading of reports: the same fields, remarks and doubts. */
@ApplicationScoped
class RecipeReader {
  private static final String MACHINE = "/machine";

  private final Machines machines;
  private final CatalogService catalog;
  private final JobReader jobs;

  RecipeReader(Machines machines, CatalogService catalog, JobReader jobs) {
    this.machines = machines;
    this.catalog = catalog;
    this.jobs = jobs;
  }

  /**
   * What may be stored.
   *
   * @param written with its own words trimmed
   */
  record Read(WrittenRecipe written, Interpretation interpretation) {
    /** What lists call it. */
    String title() {
      return written.name() == null ? interpretation.work().called() : written.name();
    }
  }

  /**
   * Reads what somebody wrote.
   *
   * @param kept what it said before: its machine may be removed by now, and its fixture may have
   *     changed; or null
   * @throws EntryRefused with the pointers of all fields at fault
   * @throws ProhibitedWork where the work takes no settings
   * @throws EntryUnconfirmed where implausible values must be confirmed first
   */
  Read read(UUID owner, RecipePosting posting, WrittenRecipe kept) {
    WrittenRecipe w = posting.written();
    FieldReader in = new FieldReader(posting.style());
    boolean sameJob = kept != null && kept.job().equals(w.job());
    WrittenJob job = sameJob ? w.job() : jobs.read(owner, w.job(), in);
    return read(owner, posting, kept == null ? null : kept.machine(), job, in);
  }

  private Read read(UUID owner, RecipePosting posting, UUID same, WrittenJob job, FieldReader in) {
    WrittenRecipe w = posting.written();
    String name = in.text("/name", w.name(), RecipeLimits.NAME, false);
    String folder = in.text("/folder", w.folder(), RecipeLimits.FOLDER, false);
    Laser laser = machine(owner, w.machine(), same).map(Machine::laser).orElse(null);
    Interpretation read = interpret(w, laser, posting.style());
    if (read.ban().isPresent()) {
      throw new ProhibitedWork(read.ban().get());
    }
    Remarks.refuse(
        Stream.concat(in.remarks().stream(), read.remarks().stream().map(RecipeReader::ofRecipe))
            .toList());
    List<Remark> open = posting.askFirst() ? read.unconfirmed(w.confirmed()) : List.of();
    if (!open.isEmpty()) {
      throw new EntryUnconfirmed(open);
    }
    return new Read(w.named(name, folder, job), read);
  }

  /**
   * One of a file of its owner's, as stored JSON; the machine may be removed by now.
   *
   * @throws EntryRefused also where the work takes no settings
   */
  Read brought(UUID owner, String words, NumberStyle style) {
    WrittenRecipe written = StoredJson.brought(words, WrittenRecipeConverter.SHAPE);
    try {
      RecipePosting posting = new RecipePosting(null, written, style, null, false);
      FieldReader in = new FieldReader(style);
      WrittenJob job = jobs.brought(owner, written.job(), in);
      return read(owner, posting, written.machine(), job, in);
    } catch (ProhibitedWork e) {
      throw new EntryRefused(RemarkId.PROHIBITED, "/material", e.ban().sentence());
    }
  }

  private Optional<Machine> machine(UUID owner, UUID id, UUID kept) {
    if (id == null) {
      return Optional.empty();
    }
    return id.equals(kept) ? machines.even(owner, id) : machines.find(owner, id);
  }

  /** A report may describe a laser instead, a recipe may not. */
  private static Remark ofRecipe(Remark remark) {
    return remark.is(RemarkId.REQUIRED) && remark.field().equals(MACHINE)
        ? remark.with("Choose one of your machines.", List.of())
        : remark;
  }

  /** What is stored, in another folder: nothing of it is asked anew. */
  Read as(RecipeEntity recipe, String folder) {
    WrittenRecipe written = recipe.written().in(folder);
    return new Read(written, interpret(written, recipe.laser(), recipe.numberStyle()));
  }

  /** What stored words mean now. */
  Interpretation interpret(WrittenRecipe written, Laser laser, NumberStyle style) {
    return ReportInterpreter.readKept(written.report(), laser, catalog.snapshot(), style);
  }
}
