package club.emberwell.recipe;

import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A recipe exactly as it came in.
 *
 * @param name what lists call it, null = the words of its work
 * @param folder in which it lies, null = in none
 * @param machine one of its owner's
 * @param job how it is done
 * @param cameFrom null = by hand; only what it says when the recipe is made counts
 * @param confirmed pointers of implausible values its owner said are meant
 */
public record WrittenRecipe(
    @Nullable String name,
    @Nullable String folder,
    @Nullable UUID machine,
    @JsonUnwrapped WrittenWork work,
    @Nullable WrittenSettings settings,
    @JsonUnwrapped WrittenJob job,
    @Nullable CameFrom cameFrom,
    @Nullable List<String> confirmed) {
  public WrittenRecipe {
    job = job == null ? WrittenJob.NONE : job;
  }

  /** Settings by themselves: nobody said how the job is done. */
  public WrittenRecipe(
      String name,
      String folder,
      UUID machine,
      WrittenWork work,
      WrittenSettings settings,
      CameFrom cameFrom) {
    this(name, folder, machine, work, settings, null, cameFrom, null);
  }

  /** The same in another folder. */
  public WrittenRecipe in(String other) {
    return new WrittenRecipe(name, other, machine, work, settings, job, cameFrom, confirmed);
  }

  /** The same, called and filed in this way, done so. */
  WrittenRecipe named(String other, String otherFolder, WrittenJob otherJob) {
    return new WrittenRecipe(
        other, otherFolder, machine, work, settings, otherJob, cameFrom, confirmed);
  }

  /** The same settings with another story. */
  WrittenRecipe from(CameFrom other) {
    return new WrittenRecipe(name, folder, machine, work, settings, job, other, confirmed);
  }

  WrittenRecipe withConfirmed(List<String> pointers) {
    return new WrittenRecipe(name, folder, machine, work, settings, job, cameFrom, pointers);
  }

  /**
   * What a report says that was made by it.
   *
   * @param judged how it came out; its settings are those of the recipe
   */
  WrittenReport report(WrittenTrial judged) {
    WrittenTrial trial =
        new WrittenTrial(null, null, settings, judged.effect(), judged.quality(), judged.defects());
    return new WrittenReport(machine, null, work, List.of(trial), null, confirmed);
  }

  /** The same before anybody said how it came out. */
  public WrittenReport report() {
    return report(new WrittenTrial(null, null, null, null, null, null));
  }
}
