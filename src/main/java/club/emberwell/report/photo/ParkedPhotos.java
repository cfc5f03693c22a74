package club.emberwell.report.photo;

import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportLimits;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Pictures that were chosen in a form whose entry is not stored yet, for their member alone: a form
 * that is refused for another reason keeps them. They go when the entry is there, or after {@link
 * ReportLimits#PARKED_FOR}.
 */
@ApplicationScoped
public class ParkedPhotos {
  private final ParkedRepository parked;
  private final PhotoSpace space;
  private final Photos photos;
  private final PhotoRepository stored;

  ParkedPhotos(ParkedRepository parked, PhotoSpace space, Photos photos, PhotoRepository stored) {
    this.parked = parked;
    this.space = space;
    this.photos = photos;
    this.stored = stored;
  }

  /** One of them, without its bytes. */
  public record Parked(UUID id, PhotoWords words, Photo.Size large) {
    public Photo.Size thumb() {
      return large.within(PhotoSize.THUMB.side());
    }
  }

  /** Under which a picture of a form goes: the same file chosen twice in one form is one. */
  public static UUID id(Actor actor, UUID form, Path upload) throws IOException {
    byte[] named =
        ByteBuffer.allocate(4 * Long.BYTES + 32)
            .putLong(actor.memberId().getMostSignificantBits())
            .putLong(actor.memberId().getLeastSignificantBits())
            .putLong(form.getMostSignificantBits())
            .putLong(form.getLeastSignificantBits())
            .put(new DigestUtils(DigestUtils.getSha256Digest()).digest(upload))
            .array();
    return UUID.nameUUIDFromBytes(named);
  }

  /** Whether a picture is there already, in its form or with what that made. */
  @Transactional
  public boolean knows(UUID id) {
    return parked.findByIdOptional(id).isPresent() || stored.findByIdOptional(id).isPresent();
  }

  /**
   * Keeps a picture for a form.
   *
   * @param form the id its entry will have
   * @throws EntryRefused where the form or the member has enough pictures
   */
  @Transactional
  public void park(Actor actor, UUID form, UUID id, Photos.Ready ready, PhotoWords words) {
    UUID member = EntryAccess.signedIn(actor);
    List<Parked> there = parked.of(member, form);
    if (there.size() >= ReportLimits.PHOTOS) {
      throw tooMany();
    }
    if (parked.of(member) >= ReportLimits.PARKED) {
      String detail =
          "Too many photos wait in forms that you did not post. Post one of them first.";
      throw new EntryRefused(RemarkId.TOO_MANY_PHOTOS, "/photo", detail);
    }
    space.need(member);
    ParkedEntity one = new ParkedEntity(id, member, form, there.size(), ready.clean());
    one.say(words.checked());
    parked.persist(one);
  }

  /** A form has more than what it makes can have. */
  public static EntryRefused tooMany() {
    return Photos.tooMany(EntryKind.REPORT);
  }

  /** Those of a form, in their order. */
  @Transactional
  public List<Parked> of(Actor actor, UUID form) {
    return form == null ? List.of() : parked.of(EntryAccess.signedIn(actor), form);
  }

  /** Says other words of one. */
  @Transactional
  public void say(Actor actor, UUID id, PhotoWords words) {
    parked.own(EntryAccess.signedIn(actor), id).ifPresent(one -> one.say(words.checked()));
  }

  @Transactional
  public void remove(Actor actor, UUID id) {
    parked.own(EntryAccess.signedIn(actor), id).ifPresent(parked::delete);
  }

  /** The JPEG in a small size, for its member. */
  @Transactional
  public byte[] thumb(Actor actor, UUID id) {
    return parked
        .own(EntryAccess.signedIn(actor), id)
        .map(one -> one.clean().thumb())
        .orElseThrow(() -> new EntryUnknown("picture"));
  }

  /**
   * Adds those of a form to what it made, in the caller's transaction.
   *
   * @param entry the actor's own report, question or answer
   * @param at when that was made
   */
  @Transactional(Transactional.TxType.MANDATORY)
  public void addTo(Actor actor, UUID form, UUID entry, Instant at) {
    if (form == null) {
      return;
    }
    List<ParkedEntity> all = parked.whole(EntryAccess.signedIn(actor), form);
    if (!all.isEmpty()) {
      List<Photos.Added> added = all.stream().map(one -> one.toAdded(at)).toList();
      // first, so that their space is not counted twice
      all.forEach(parked::delete);
      parked.flush();
      photos.add(actor, entry, added);
    }
  }

  /** Forgets what nobody came back for. */
  @Scheduled(every = "1h", delayed = "8m")
  public void forgetOld() {
    forgetOlder(Instant.now().minus(ReportLimits.PARKED_FOR));
  }

  /**
   * The same of those parked before a time.
   *
   * @return how many
   */
  @Transactional
  public long forgetOlder(Instant than) {
    return parked.deleteOlder(than);
  }
}
