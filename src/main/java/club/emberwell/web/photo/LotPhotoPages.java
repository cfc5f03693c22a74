package club.emberwell.web.photo;

import club.emberwell.entry.EntryKind;
import club.emberwell.lot.Lots;
import club.emberwell.member.Role;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.ReadyPhotos;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.UUID;

/** The photo of a lot. */
@Path("/lots")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class LotPhotoPages extends KeptPhotoPages {
  private final Lots lots;

  LotPhotoPages(Lots lots, KeptPhotos photos, ReadyPhotos ready) {
    super(EntryKind.LOT, photos, ready);
    this.lots = lots;
  }

  @Override
  String title(UUID id) {
    return lots.get(actor(), id).title();
  }
}
