package club.emberwell.web.grid;

import club.emberwell.access.CurrentActor;
import club.emberwell.grid.GridService;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.UUID;

/** Leads from the page of a report to the reader's own grid whose results it holds. */
@Named("gridOf")
@ApplicationScoped
public class GridOfReport {
  private final GridService grids;
  private final CurrentActor current;

  GridOfReport(GridService grids, CurrentActor current) {
    this.grids = grids;
    this.current = current;
  }

  /** Its address; null where there is none. */
  public String report(String id) {
    return grids
        .ofReport(current.get(), UUID.fromString(id))
        .map(grid -> "/grids/" + grid)
        .orElse(null);
  }
}
