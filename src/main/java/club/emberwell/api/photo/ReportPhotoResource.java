package club.emberwell.api.photo;

import club.emberwell.entry.EntryKind;
import jakarta.ws.rs.Path;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The pictures of a report. */
@Path("/api/v1/reports")
@Tag(name = "Reports")
public class ReportPhotoResource extends PhotoResource {
  ReportPhotoResource(PhotoRequests requests) {
    super(EntryKind.REPORT, requests);
  }
}
