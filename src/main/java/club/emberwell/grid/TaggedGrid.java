package club.emberwell.grid;

import club.emberwell.entry.EntryKind;
import club.emberwell.tag.PublicSide;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.UUID;

/** What others find behind the tag of a grid: its results, once they are public. */
@ApplicationScoped
class TaggedGrid implements PublicSide {
  private final GridRepository grids;

  TaggedGrid(GridRepository grids) {
    this.grids = grids;
  }

  @Override
  public EntryKind kind() {
    return EntryKind.GRID;
  }

  @Override
  public Optional<UUID> report(UUID id) {
    return grids.publicReport(id);
  }
}
