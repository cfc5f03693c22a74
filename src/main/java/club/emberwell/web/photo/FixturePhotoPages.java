package club.emberwell.web.photo;

import club.emberwell.entry.EntryKind;
import club.emberwell.fixture.Fixtures;
import club.emberwell.report.photo.KeptPhotos;
import jakarta.ws.rs.Path;
import java.util.UUID;

/** The photo of a fixture. */
@Path("/fixtures")
public class FixturePhotoPages extends KeptPhotoPages {
  private final Fixtures fixtures;

  FixturePhotoPages(Fixtures fixtures, KeptPhotos photos, OnePhoto one) {
    super(EntryKind.FIXTURE, photos, one);
    this.fixtures = fixtures;
  }

  @Override
  String title(UUID id) {
    return fixtures.get(actor(), id).title();
  }
}
