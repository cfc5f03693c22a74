package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.entry.EntryState;
import club.emberwell.member.Actor;
import club.emberwell.recipe.CameFrom.Way;
import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportSource;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Reads where a new recipe's settings came from: only what its owner can see. */
@ApplicationScoped
class Origins {
  private static final String AT = "/cameFrom";

  private final ReportSource reports;
  private final RecipeRepository recipes;

  Origins(ReportSource reports, RecipeRepository recipes) {
    this.reports = reports;
    this.recipes = recipes;
  }

  /** Only what belongs to the way; by hand where nothing is at fault and nothing was said. */
  CameFrom read(Actor actor, CameFrom w, FieldReader in) {
    if (w == null) {
      return CameFrom.HAND;
    }
    Way way =
        in.choice(AT + "/way", w.way(), code -> Coded.of(Way.class, code), Way.values(), Way::code);
    if (way == null) {
      way = given(w);
    }
    return switch (way) {
      case REPORT -> report(actor, w, in);
      case GRID -> grid(actor, w, in);
      case RECIPE -> recipe(actor, w, in);
      case ANSWER, TABLE, HAND -> CameFrom.of(way);
    };
  }

  private static Way given(CameFrom w) {
    if (w.report() != null) {
      return Way.REPORT;
    }
    if (w.grid() != null) {
      return Way.GRID;
    }
    return w.recipe() == null ? Way.HAND : Way.RECIPE;
  }

  private CameFrom report(Actor actor, CameFrom w, FieldReader in) {
    UUID id = in.required(AT + "/report", w.report());
    int tests = id == null ? 0 : tests(actor, id);
    if (id != null && tests == 0) {
      unknown(RemarkId.REPORT_UNKNOWN, "/report", "There is no such report.", in);
    } else if (w.trial() != null && (w.trial() < 0 || w.trial() >= tests)) {
      unknown(RemarkId.OUT_OF_RANGE, "/trial", "This report has no such test.", in);
    }
    return CameFrom.report(id, w.trial());
  }

  private int tests(Actor actor, UUID id) {
    return reports.byIds(List.of(id)).stream()
        .filter(r -> r.state() == EntryState.LIVE || actor.is(r.author().id()))
        .mapToInt(r -> r.trials().size())
        .sum();
  }

  private CameFrom grid(Actor actor, CameFrom w, FieldReader in) {
    UUID id = in.required(AT + "/grid", w.grid());
    if (id != null && !recipes.isOwnGrid(actor.memberId(), id)) {
      unknown(RemarkId.GRID_UNKNOWN, "/grid", "You have no such grid.", in);
    }
    return CameFrom.grid(id);
  }

  private CameFrom recipe(Actor actor, CameFrom w, FieldReader in) {
    UUID id = in.required(AT + "/recipe", w.recipe());
    int newest =
        id == null
            ? 0
            : recipes
                .whole(id)
                .map(RecipeEntity::entry)
                .filter(entry -> actor.is(entry.memberId()))
                .map(entry -> entry.version())
                .orElse(0);
    int version = w.version() == null ? newest : w.version();
    if (id != null && newest == 0) {
      unknown(RemarkId.RECIPE_UNKNOWN, "/recipe", "You have no such recipe.", in);
    } else if (version < 1 || version > newest) {
      unknown(RemarkId.REVISION_UNKNOWN, "/version", "This recipe has no such revision.", in);
    }
    return CameFrom.recipe(id, version);
  }

  private static void unknown(RemarkId id, String field, String detail, FieldReader in) {
    in.add(Remark.error(id, AT + field, detail));
  }
}
