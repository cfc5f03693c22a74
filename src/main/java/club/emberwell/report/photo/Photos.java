package club.emberwell.report.photo;

import club.emberwell.bench.StoredJson;
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
import club.emberwell.entry.Reasons;
import club.emberwell.entry.Words;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportLimits;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * The pictures of reports, questions and answers: adding, changing, taking away. What readers see
 * of them is {@link ShownPhotos}.
 */
@ApplicationScoped
public class Photos implements Kind {
  private static final Set<EntryKind> PHOTOS = Set.of(EntryKind.PHOTO);
  private static final TypeReference<PhotoWords> SHAPE = new TypeReference<>() {};

  private final PhotoRepository photos;
  private final PhotoSpace space;
  private final EntryLife life;

  Photos(PhotoRepository photos, PhotoSpace space, EntryLife life) {
    this.photos = photos;
    this.space = space;
    this.life = life;
  }

  /** A picture made ready for keeping. */
  public static final class Ready {
    private final CleanPicture clean;

    Ready(CleanPicture clean) {
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

    CleanPicture clean() {
      return clean;
    }
  }

  /**
   * A picture about to be added.
   *
   * @param id the client gave it, or null; the same id with the same picture twice is one
   * @param at when it is added; null = now
   */
  public record Added(UUID id, Ready ready, PhotoWords words, Instant at) {
    /** Without words, now. */
    public static Added of(UUID id, Ready ready) {
      return new Added(id, ready, PhotoWords.NONE, null);
    }
  }

  /** What the program drew itself, made ready. */
  public static Ready drawn(BufferedImage own) {
    try {
      return new Ready(PictureCleaner.drawn(own));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Adds a picture to one's own report, question or answer, behind those it has.
   *
   * @throws EntryRefused where the entry or the member has enough pictures, or its words cannot be
   *     kept
   */
  @Transactional
  public Photo add(Actor actor, UUID of, Added added) {
    return add(actor, of, List.of(added)).get(0);
  }

  /** The same of several at once, in their order. */
  @Transactional
  public List<Photo> add(Actor actor, UUID of, List<Added> added) {
    EntryEntity parent = life.own(actor, EntryKind.PICTURED, of, null);
    List<UUID> ids = new ArrayList<>();
    EntryAction action = null;
    Instant at = Instant.now();
    for (Added one : added) {
      UUID id = one.id() == null ? UUID.randomUUID() : one.id();
      ids.add(id);
      if (life.isThere(one.id(), EntryKind.PHOTO, actor.memberId())) {
        same(of, id, one.ready());
        continue;
      }
      at = one.at() == null ? at : one.at();
      begin(actor, parent, id, one, at);
      action = EntryAction.PHOTO_ADDED;
    }
    if (action != null) {
      life.touched(parent, action, Cause.of(actor, at));
    }
    photos.flush();
    return ids.stream().map(photos::there).toList();
  }

  private void begin(Actor actor, EntryEntity parent, UUID id, Added one, Instant at) {
    if (parent.state() == EntryState.WITHDRAWN) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "You cannot edit a withdrawn " + parent.kind().code() + ".");
    }
    if (photos.of(parent.id()).size() >= ReportLimits.PHOTOS) {
      throw tooMany(parent.kind());
    }
    space.need(actor.memberId());
    PhotoWords words = one.words().checked();
    NewEntry entry = new NewEntry(id, EntryKind.PHOTO, parent.id(), Origin.HERE, at);
    photos.persistAndFlush(
        new PhotoEntity(
            life.begin(actor, entry, words(words)),
            photos.lastPlace(parent.id()),
            words,
            one.ready().clean()));
  }

  private static Words words(PhotoWords words) {
    String title = words.caption() == null ? "A photo" : words.caption();
    return new Words(title, StoredJson.write(words), null);
  }

  static EntryRefused tooMany(EntryKind of) {
    String detail =
        "%s has at most %d photos."
            .formatted(
                "A" + (of == EntryKind.ANSWER ? "n " : " ") + of.code(), ReportLimits.PHOTOS);
    return new EntryRefused(RemarkId.TOO_MANY_PHOTOS, "/photo", detail);
  }

  /** What came in already under this id; its bytes are gone where it was removed since. */
  private void same(UUID parent, UUID photo, Ready ready) {
    PhotoEntity there =
        photos.findByIdOptional(photo).orElseThrow(() -> new EntryUnknown("picture"));
    if (!there.shows(parent, ready.clean())) {
      throw EntryLife.taken(EntryKind.PHOTO);
    }
  }

  /**
   * Says other words of a photo; its author may, and moderators.
   *
   * @param version the change is based on; null = whatever the version
   * @throws EntryChanged where somebody else changed it meanwhile
   */
  @Transactional
  public Photo say(Actor actor, UUID id, Integer version, PhotoWords words) {
    return say(actor, id, version, words, null);
  }

  private Photo say(Actor actor, UUID id, Integer version, PhotoWords words, String reason) {
    EntryEntity picture = editable(actor, id, version);
    PhotoWords read = words.checked();
    if (!photos.there(id).words().equals(read)) {
      Cause cause = Cause.now(actor, Reasons.checked(reason));
      photos.say(id, read);
      life.rewritten(picture, words(read), EntryAction.EDITED, cause);
      touch(picture, EntryAction.PHOTO_CHANGED, cause);
    }
    photos.flush();
    return photos.there(id);
  }

  /**
   * Puts a photo at another place among those of its entry; the first one stands for it.
   *
   * @param position 1 = the first; behind all others where there are fewer
   */
  @Transactional
  public Photo move(Actor actor, UUID id, int position) {
    if (position < 1) {
      throw new EntryRefused(
          List.of(Remark.error(RemarkId.OUT_OF_RANGE, "/position", "The first place is 1.")));
    }
    EntryEntity picture = editable(actor, id, null);
    List<UUID> before = photos.of(picture.parentId()).stream().map(Photo::id).toList();
    List<UUID> after = new ArrayList<>(before);
    after.remove(id);
    after.add(Math.min(position - 1, after.size()), id);
    if (!after.equals(before)) {
      for (int i = 0; i < after.size(); i++) {
        photos.put(after.get(i), i);
      }
      touch(picture, EntryAction.PHOTO_CHANGED, Cause.now(actor, null));
    }
    return photos.there(id);
  }

  /** A photo in sight whose entry stays as it is until the transaction ends. */
  private EntryEntity editable(Actor actor, UUID id, Integer version) {
    EntryEntity picture = life.find(PHOTOS, id).orElseThrow(() -> new EntryUnknown("picture"));
    EntryAccess.edit(actor, life.locked(EntryKind.PICTURED, picture.parentId()));
    if (!picture.live()) {
      throw new EntryUnknown("picture");
    }
    if (version != null && picture.version() != version) {
      throw new EntryChanged(picture.version());
    }
    return picture;
  }

  /** Takes a picture and its bytes away for good; its author may, and moderators. */
  @Transactional
  public void remove(Actor actor, UUID id) {
    EntryEntity picture = editable(actor, id, null);
    photos.deleteById(id);
    life.move(picture, EntryState.WITHDRAWN, EntryAction.WITHDRAWN, Cause.now(actor, null));
  }

  @Override
  public Set<EntryKind> kinds() {
    return PHOTOS;
  }

  /** What shows it is another version of itself. */
  @Override
  public void moved(EntryEntity picture, Cause cause) {
    touch(picture, picture.live() ? EntryAction.PHOTO_ADDED : EntryAction.PHOTO_REMOVED, cause);
  }

  private void touch(EntryEntity picture, EntryAction action, Cause cause) {
    life.touched(life.locked(EntryKind.PICTURED, picture.parentId()), action, cause);
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    say(actor, id, version, StoredJson.read(written, SHAPE), reason);
  }
}
