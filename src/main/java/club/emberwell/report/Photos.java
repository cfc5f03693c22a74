package club.emberwell.report;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/** The pictures of reports. */
@ApplicationScoped
public class Photos {
  private final PhotoRepository photos;
  private final ReportRepository reports;
  private final ReportReader reader;
  private final ReportWriter writer;
  private final Audit audit;

  Photos(
      PhotoRepository photos,
      ReportRepository reports,
      ReportReader reader,
      ReportWriter writer,
      Audit audit) {
    this.photos = photos;
    this.reports = reports;
    this.reader = reader;
    this.writer = writer;
    this.audit = audit;
  }

  /** A picture made ready for keeping. */
  public static final class Ready {
    private final CleanPicture clean;

    private Ready(CleanPicture clean) {
      this.clean = clean;
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
   * @throws EntryRefused where the report or the member has enough pictures
   */
  @Transactional
  public Photo add(Actor actor, UUID id, Ready ready) {
    ReportEntity report = changeable(actor, id);
    if (photos.of(id).size() >= ReportLimits.PHOTOS) {
      throw tooMany("A report has at most " + ReportLimits.PHOTOS + " pictures.");
    }
    if (photos.bytesOf(actor.memberId()) >= ReportLimits.PHOTO_BYTES_PER_MEMBER) {
      throw tooMany("Your pictures fill the space a member has.");
    }
    Instant now = Instant.now();
    UUID photo = UUID.randomUUID();
    photos.persistAndFlush(new PhotoEntity(photo, id, actor.memberId(), ready.clean, now));
    writer.touch(report, RevisionAction.PHOTO_ADDED, new Cause(actor.memberId(), now, null));
    return photos.of(id).stream().filter(p -> p.id().equals(photo)).findFirst().orElseThrow();
  }

  /** Takes a picture away; its author may, and moderators. */
  @Transactional
  public void remove(Actor actor, UUID id, UUID photo) {
    ReportEntity report = reports.locked(id).orElseThrow(() -> new EntryUnknown("report"));
    ReportAccess.edit(actor, report);
    if (!photos.remove(id, photo)) {
      throw new EntryUnknown("picture");
    }
    Cause cause = new Cause(actor.memberId(), Instant.now(), null);
    writer.touch(report, RevisionAction.PHOTO_REMOVED, cause);
  }

  /**
   * Takes a picture out of sight or brings it back; it is kept.
   *
   * @param reason for the author; never blank
   * @throws EntryForbidden for whoever is no moderator and for one's own picture
   */
  @Transactional
  public void hide(Actor actor, UUID photo, boolean hidden, String reason) {
    if (!actor.moderates()) {
      throw new EntryForbidden("Only moderators decide this.");
    }
    PhotoEntity picture =
        photos.findByIdOptional(photo).orElseThrow(() -> new EntryUnknown("picture"));
    if (actor.is(picture.memberId())) {
      throw new EntryForbidden("Nobody decides about their own picture.");
    }
    String why = Reasons.needed(reason);
    if (picture.hidden() != hidden) {
      Instant now = Instant.now();
      picture.hide(hidden ? now : null);
      ReportEntity report = reports.locked(picture.reportId()).orElseThrow();
      RevisionAction action = hidden ? RevisionAction.PHOTO_REMOVED : RevisionAction.PHOTO_ADDED;
      writer.touch(report, action, new Cause(actor.memberId(), now, why));
      String deed = hidden ? "hide" : "show";
      audit.record(actor, deed, "photo", photo.toString(), why, Map.of());
    }
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

  private ReportEntity changeable(Actor actor, UUID id) {
    ReportEntity report = reports.locked(id).orElseThrow(() -> new EntryUnknown("report"));
    ReportAccess.own(actor, report);
    if (report.state() == ReportState.WITHDRAWN) {
      throw new EntryForbidden("A withdrawn report is not changed any more.");
    }
    return report;
  }

  private static EntryRefused tooMany(String detail) {
    return new EntryRefused(Remark.error(RemarkId.TOO_MANY_PHOTOS, "/photo", detail));
  }
}
