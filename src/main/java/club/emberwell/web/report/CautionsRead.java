package club.emberwell.web.report;

import club.emberwell.report.ReportService;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.UUID;

/** Whether the author of a report had the cautions of its material in sight before. */
@Named("cautionsRead")
@ApplicationScoped
public class CautionsRead {
  private final ReportService reports;

  CautionsRead(ReportService reports) {
    this.reports = reports;
  }

  /** False on the first report about a material: there they stand open. */
  public boolean before(String id) {
    return reports.isKnownMaterial(UUID.fromString(id));
  }
}
