package club.emberwell.recipe;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How the job of a recipe is done, for whoever stands at the machine.
 *
 * @param fixture of its owner, in which the pieces lie
 * @param position of the piece in it, counted from 1 row by row; null = all of them
 * @param room of its owner, in which it is done
 * @param steps line by line, in order; null = none
 */
public record WrittenJob(
    @Nullable UUID fixture,
    @Nullable Integer position,
    @Nullable UUID room,
    @Nullable List<String> steps) {
  static final WrittenJob NONE = new WrittenJob(null, null, null, null);

  public WrittenJob {
    // none are written like recipes were before there were steps: the same words stay the same
    steps = steps == null || steps.isEmpty() ? null : List.copyOf(steps);
  }

  /** Never null. */
  public List<String> lines() {
    return steps == null ? List.of() : steps;
  }
}
