package club.emberwell.recipe;

import club.emberwell.remark.Coded;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Where the settings of a recipe came from when it was made; it stays so.
 *
 * @param way code of a {@link Way}; null = by what else is given, else by hand
 * @param report whose settings they were
 * @param trial which of the report's tests, 0 = the first
 * @param grid whose best test it was
 * @param recipe it was made from
 * @param version of that recipe
 */
public record CameFrom(
    @Nullable String way,
    @Nullable UUID report,
    @Nullable Integer trial,
    @Nullable UUID grid,
    @Nullable UUID recipe,
    @Nullable Integer version) {
  public static final CameFrom HAND = of(Way.HAND);

  /** How settings get into a recipe. */
  public enum Way implements Coded {
    REPORT("report"),
    /** What the club's results say to start with. */
    ANSWER("answer"),
    /** The best test of one's own grid. */
    GRID("grid"),
    RECIPE("recipe"),
    /** A table of one's own that was read in. */
    TABLE("table"),
    HAND("hand");

    private final String code;

    Way(String code) {
      this.code = code;
    }

    @Override
    public String code() {
      return code;
    }
  }

  /** A way that names nothing. */
  public static CameFrom of(Way way) {
    return new CameFrom(way.code(), null, null, null, null, null);
  }

  public static CameFrom report(UUID id, Integer trial) {
    return new CameFrom(Way.REPORT.code(), id, trial, null, null, null);
  }

  public static CameFrom grid(UUID id) {
    return new CameFrom(Way.GRID.code(), null, null, id, null, null);
  }

  public static CameFrom recipe(UUID id, int version) {
    return new CameFrom(Way.RECIPE.code(), null, null, null, id, version);
  }
}
