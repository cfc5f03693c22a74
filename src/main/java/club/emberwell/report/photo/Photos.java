package club.emberwell.report.photo;

import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Words;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportLimits;
import club.emberwell.report.ReportReader;
import club.emberwell.report.ReportService;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** The pictures of reports. */
@ApplicationScoped
public class Photos implements Kind {
  private static final Set<EntryKind> PHOTOS = Set.of(EntryKind.PHOTO);

  private static final Words WORDS = new Words("A photo", "{}", null);

  private final PhotoRepository photos;
  private final ReportReader reader;
  private final EntryLife life;

  Photos(PhotoRepository photos, ReportReader reader, EntryLife life) {
    this.photos = photos;
    this.reader = reader;
    this.life = life;
  }

  /** A picture made ready for keeping. */
  public static final class Ready {
    private final CleanPicture clean;

    private Ready(CleanPicture clean) {
      this.clean = clean;
    }

    public int width() {
      return clean.width();
    }

    public int height() {
      return clean.height();
    }

    /** Our own JPEG. */
    public byte[] picture() {
      return clean.picture();
    }
  }

  /**
   * Decodes and re-encodes an upload. Takes up to a second: call it outside of transactions.
   *
   * @throws PictureRefused where it is no picture we take
   */
  public static Ready ready(byte[] upload) {
    return new Ready(PictureCleaner.clean(upload));
  }

  /**
   * Adds a picture to one's own report.
   *
   * @param made the id the client gave it, or null; the same id with the same picture twice is one
   * @throws EntryRefused where the report or the member has enough pictures
   */
  @Transactional
  public Photo add(Actor actor, UUID id, UUID made, Ready ready) {
    EntryEntity report = life.own(actor, ReportService.REPORTS, id, null);
    if (life.isThere(made, EntryKind.PHOTO, actor.memberId())) {
      return same(id, made, ready);
    }
    if (report.state() == EntryState.WITHDRAWN) {
      throw new EntryForbidden(EntryForbidden.Why.STATE, "You cannot edit a withdrawn report.");
    }
    if (photos.of(id).size() >= ReportLimits.PHOTOS) {
      throw tooMany("A report has at most " + ReportLimits.PHOTOS + " pictures.");
    }
    if (photos.bytesOf(actor.memberId()) >= ReportLimits.PHOTO_BYTES_PER_MEMBER) {
      throw tooMany("You have used all your space for pictures.");
    }
    Instant now = Instant.now();
    UUID own = made == null ? UUID.randomUUID() : made;
    NewEntry entry = new NewEntry(own, EntryKind.PHOTO, id, Origin.HERE, now);
    PhotoEntity photo = new PhotoEntity(life.begin(actor, entry, WORDS), ready.clean);
    photos.persistAndFlush(photo);
    life.touched(report, EntryAction.PHOTO_ADDED, Cause.of(actor, now));
    return photo.toPhoto();
  }

  /** What came in already under this id; its bytes are gone where it was removed since. */
  private Photo same(UUID report, UUID photo, Ready ready) {
    PhotoEntity there =
        photos.findByIdOptional(photo).orElseThrow(() -> new EntryUnknown("picture"));
    if (!there.shows(report, ready.clean)) {
      throw EntryLife.taken(EntryKind.PHOTO);
    }
    return there.toPhoto();
  }

  /** Takes a picture and its bytes away for good; its author may, and moderators. */
  @Transactional
  public void remove(Actor actor, UUID id, UUID photo) {
    Optional<EntryEntity> found = life.find(PHOTOS, photo);
    EntryAccess.edit(actor, life.locked(ReportService.REPORTS, id));
    EntryEntity picture =
        found
            .filter(p -> p.live() && p.parentId().equals(id))
            .orElseThrow(() -> new EntryUnknown("picture"));
    photos.deleteById(photo);
    life.move(picture, EntryState.WITHDRAWN, EntryAction.WITHDRAWN, Cause.now(actor, null));
  }

  @Override
  public Set<EntryKind> kinds() {
    return PHOTOS;
  }

  /** What a report shows is another version of it. */
  @Override
  public void moved(EntryEntity picture, Cause cause) {
    EntryAction action = picture.live() ? EntryAction.PHOTO_ADDED : EntryAction.PHOTO_REMOVED;
    life.touched(life.locked(ReportService.REPORTS, picture.parentId()), action, cause);
  }

  @Override
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    throw new EntryForbidden(EntryForbidden.Why.STATE, "A picture has one version.");
  }

  /**
   * The JPEG, for whoever may see the report.
   *
   * @param small the thumbnail instead of the large size
   */
  @Transactional
  public byte[] bytes(Actor actor, UUID id, UUID photo, boolean small) {
    reader.seen(actor, id);
    return photos.bytes(id, photo, small).orElseThrow(() -> new EntryUnknown("picture"));
  }

  private static EntryRefused tooMany(String detail) {
    return new EntryRefused(RemarkId.TOO_MANY_PHOTOS, "/photo", detail);
  }
}
