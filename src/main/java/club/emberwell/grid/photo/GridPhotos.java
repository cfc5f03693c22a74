package club.emberwell.grid.photo;

import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.grid.GridService;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.photo.PhotoSpace;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.Pixels;
import club.emberwell.report.photo.ReadyPhotos;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.awt.image.BufferedImage;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** The photos of a member's grids, one each; nobody else sees them. */
@ApplicationScoped
public class GridPhotos {
  private static final Set<EntryKind> GRIDS = Set.of(EntryKind.GRID);

  private final GridPhotoRepository photos;
  private final GridService grids;
  private final Photos ofReports;
  private final ReadyPhotos ready;
  private final PhotoSpace space;
  private final EntryLife life;

  GridPhotos(
      GridPhotoRepository photos,
      GridService grids,
      Photos ofReports,
      ReadyPhotos ready,
      PhotoSpace space,
      EntryLife life) {
    this.photos = photos;
    this.grids = grids;
    this.ofReports = ofReports;
    this.ready = ready;
    this.space = space;
    this.life = life;
  }

  /**
   * Keeps a picture in the place of the one before; its corners are to be marked anew.
   *
   * @throws EntryRefused where the member has enough pictures
   */
  @Transactional
  public GridPhoto put(Actor actor, UUID id, Photos.Ready ready) {
    life.own(actor, GRIDS, id, null);
    grids.get(actor, id);
    space.need(EntryAccess.signedIn(actor));
    GridPhotoEntity photo = photos.findById(id);
    if (photo == null) {
      photo = new GridPhotoEntity(id);
      photo.take(ready, Instant.now());
      photos.persist(photo);
    } else if (!Arrays.equals(photo.picture(), ready.picture())) {
      // the same picture once more is an answer that got lost: its corners stay
      photo.take(ready, Instant.now());
    }
    return photo.toPhoto();
  }

  /**
   * Keeps where the grid lies in its photo.
   *
   * @throws EntryRefused where that cannot be
   * @throws EntryUnknown where there is no photo
   */
  @Transactional
  public GridPhoto mark(Actor actor, UUID id, Corners corners) {
    life.own(actor, GRIDS, id, null);
    GridPhotoEntity photo = found(actor, id);
    GridPhoto stored = photo.toPhoto();
    String fault = corners.fault(stored.width(), stored.height(), lying(actor, id));
    if (fault != null) {
      throw new EntryRefused(RemarkId.CORNERS_UNUSABLE, "/corners", fault);
    }
    photo.mark(corners);
    return photo.toPhoto();
  }

  /** Takes the picture and its bytes away for good. */
  @Transactional
  public void remove(Actor actor, UUID id) {
    photos.delete(found(actor, id));
  }

  @Transactional
  public Optional<GridPhoto> of(Actor actor, UUID id) {
    grids.even(actor, id);
    return photos.findByIdOptional(id).map(GridPhotoEntity::toPhoto);
  }

  /** The JPEG. */
  @Transactional
  public byte[] bytes(Actor actor, UUID id) {
    return found(actor, id).picture();
  }

  private GridPhotoEntity found(Actor actor, UUID id) {
    grids.get(actor, id);
    return photos.findByIdOptional(id).orElseThrow(() -> new EntryUnknown("photo"));
  }

  /** A photo with its picture, to be read outside of a transaction. */
  record Marked(byte[] picture, Corners corners) {}

  @Transactional
  Optional<Marked> marked(Actor actor, UUID id) {
    grids.get(actor, id);
    return photos
        .findByIdOptional(id)
        .filter(photo -> photo.toPhoto().corners() != null)
        .map(photo -> new Marked(photo.picture(), photo.toPhoto().corners()));
  }

  /**
   * The colours of the cells; empty where there is no photo, its corners are not marked, or the
   * cells were moved since.
   */
  public Optional<GridColours> colours(Actor actor, UUID id, GridPlan plan) {
    return marked(actor, id).flatMap(photo -> ready.worked(actor, () -> colours(photo, plan)));
  }

  private static Optional<GridColours> colours(Marked photo, GridPlan plan) {
    BufferedImage picture = Pixels.decoded(photo.picture());
    PhotoPlan lying = lying(plan);
    return photo.corners().fault(picture.getWidth(), picture.getHeight(), lying) == null
        ? Optional.of(GridColours.of(picture, photo.corners(), lying))
        : Optional.empty();
  }

  /**
   * The picture made ready for the report of the grid; null where there is none, or it is there
   * already. Takes up to a second: call it outside of transactions.
   */
  public Photos.Ready toShow(Actor actor, UUID id) {
    return of(actor, id).filter(photo -> photo.shown() == null).isPresent()
        ? ready.again(actor, bytes(actor, id))
        : null;
  }

  /** Adds the picture to those of the report, in the caller's transaction. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void show(Actor actor, UUID id, UUID report, Photos.Ready ready) {
    GridPhotoEntity photo = found(actor, id);
    if (photo.toPhoto().shown() == null) {
      photo.shown(ofReports.add(actor, report, Photos.Added.of(null, ready)).id());
    }
  }

  /**
   * The photo as if taken from straight above, cut at the outermost cells.
   *
   * @throws EntryUnknown where there is none, or its corners are not marked
   */
  public byte[] flat(Actor actor, UUID id) {
    Marked photo = marked(actor, id).orElseThrow(() -> new EntryUnknown("photo"));
    PhotoPlan lying = lying(actor, id);
    return ready.worked(
        actor,
        () ->
            Pixels.jpeg(
                new FlatView(Pixels.decoded(photo.picture()), photo.corners(), lying).whole()));
  }

  private PhotoPlan lying(Actor actor, UUID id) {
    return lying(grids.cells(grids.get(actor, id)));
  }

  /** A photo shows one blank: the first, where a grid takes several. */
  public static PhotoPlan lying(GridPlan plan) {
    return new PhotoPlan(
        Math.min(plan.rows(), plan.layout().parts().rows()),
        Math.min(plan.columns(), plan.layout().parts().columns()),
        plan.layout().cell(),
        plan.layout().gap());
  }
}
