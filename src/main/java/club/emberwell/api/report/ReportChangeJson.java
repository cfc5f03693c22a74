package club.emberwell.api.report;

import club.emberwell.api.view.ReportJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.report.copy.ReportChange;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a copy has to do about one report.
 *
 * @param gone true: delete it, for it is public no more
 * @param updatedAt when it changed last
 * @param report as it is now, in the form in which a search finds it; left out of what is gone
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record ReportChangeJson(UUID id, boolean gone, Instant updatedAt, @Nullable ReportJson report) {
  static ReportChangeJson of(ReportChange change, ReportViews views) {
    return new ReportChangeJson(
        change.id(),
        change.report().isEmpty(),
        change.at(),
        change.report().map(views::copied).orElse(null));
  }
}
