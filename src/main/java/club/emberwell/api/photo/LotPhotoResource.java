package club.emberwell.api.photo;

import club.emberwell.api.writes.ApiRequest;
import club.emberwell.entry.EntryKind;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.ReadyPhotos;
import jakarta.ws.rs.Path;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The photo of a lot, for its author. */
@Path("/api/v1/lots")
@Tag(name = "Lots")
public class LotPhotoResource extends KeptPhotoResource {
  LotPhotoResource(KeptPhotos photos, ReadyPhotos ready, ApiRequest request) {
    super(EntryKind.LOT, photos, ready, request);
  }
}
