package club.emberwell.web.photo;

import club.emberwell.entry.EntryKind;
import club.emberwell.lot.Lots;
import club.emberwell.report.photo.KeptPhotos;
import jakarta.ws.rs.Path;
import java.util.UUID;

/** The photo of a lot. */
@Path("/lots")
public class LotPhotoPages extends KeptPhotoPages {
  private final Lots lots;

  LotPhotoPages(Lots lots, KeptPhotos photos, OnePhoto one) {
    super(EntryKind.LOT, photos, one);
    this.lots = lots;
  }

  @Override
  String title(UUID id) {
    return lots.get(actor(), id).title();
  }
}
