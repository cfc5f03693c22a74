package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.UUID;

/** Reads how a job is done: only in what its owner has. */
@ApplicationScoped
class JobReader {
  private final RecipeRepository rows;

  JobReader(RecipeRepository rows) {
    this.rows = rows;
  }

  /** With its lines trimmed. */
  WrittenJob read(UUID owner, WrittenJob w, FieldReader in) {
    return read(owner, w, in, true);
  }

  /** Out of a file of its owner's: what it names may be gone, or smaller than it was. */
  WrittenJob brought(UUID owner, WrittenJob w, FieldReader in) {
    Integer position = w.fixture() == null ? null : w.position();
    return read(owner, new WrittenJob(w.fixture(), position, w.room(), w.steps()), in, false);
  }

  private WrittenJob read(UUID owner, WrittenJob w, FieldReader in, boolean fits) {
    if (w.fixture() == null && w.position() != null) {
      unknown(RemarkId.REQUIRED, "/fixture", "Choose the fixture with this position.", in);
    } else if (w.fixture() != null) {
      fixture(owner, w, in, fits);
    }
    if (w.room() != null && !rows.isOwn(owner, EntryKind.ROOM, w.room())) {
      unknown(RemarkId.CHOICE_UNKNOWN, "/room", "You have no such room.", in);
    }
    return new WrittenJob(
        w.fixture(),
        w.position(),
        w.room(),
        in.lines("/steps", w.steps(), RecipeLimits.STEPS, RecipeLimits.STEP));
  }

  private void fixture(UUID owner, WrittenJob w, FieldReader in, boolean fits) {
    Optional<Integer> positions = rows.positions(owner, w.fixture());
    if (positions.isEmpty()) {
      unknown(RemarkId.CHOICE_UNKNOWN, "/fixture", "You have no such fixture.", in);
    } else if (w.position() != null
        && (w.position() < 1 || fits && w.position() > positions.get())) {
      String detail = "This fixture has positions 1 to %d.".formatted(positions.get());
      unknown(RemarkId.OUT_OF_RANGE, "/position", detail, in);
    }
  }

  private static void unknown(RemarkId id, String pointer, String detail, FieldReader in) {
    in.add(Remark.error(id, pointer, detail));
  }
}
