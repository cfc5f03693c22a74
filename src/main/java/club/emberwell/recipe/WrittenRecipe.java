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
 * @param cameFrom null = by hand; only what it says when the recipe is made counts
 * @param confirmed pointers of implausible values its owner said are meant
 */
public record WrittenRecipe(
    @Nullable String name,
    @Nullable String folder,
    @Nullable UUID machine,
    @JsonUnwrapped WrittenWork work,
    @Nullable WrittenSettings settings,
    @Nullable CameFrom cameFrom,
    @Nullable List<String> confirmed) {

  /** The same in another folder. */
  public WrittenRecipe in(String other) {
    return new WrittenRecipe(name, other, machine, work, settings, cameFrom, confirmed);
  }

  /** The same, called and filed in this way. */
  WrittenRecipe named(String other, String otherFolder) {
    return new WrittenRecipe(other, otherFolder, machine, work, settings, cameFrom, confirmed);
  }

  /** The same settings with another story. */
  WrittenRecipe from(CameFrom other) {
    return new WrittenRecipe(name, folder, machine, work, settings, other, confirmed);
  }

  WrittenRecipe withConfirmed(List<String> pointers) {
    return new WrittenRecipe(name, folder, machine, work, settings, cameFrom, pointers);
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
