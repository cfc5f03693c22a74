package club.emberwell.web.photo;

import club.emberwell.access.Awaited;
import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.ParkedPhotos;
import club.emberwell.report.photo.ParkedPhotos.Parked;
import club.emberwell.report.photo.PhotoSpace;
import club.emberwell.report.photo.PhotoWords;
import club.emberwell.report.photo.PictureRefused;
import club.emberwell.report.photo.PicturesBusy;
import club.emberwell.report.photo.ReadyPhotos;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The photos of a form: chosen before it is sent, parked when it arrives, shown again with it where
 * it is refused, added to what it makes.
 */
@Named("chosenPhotos")
@ApplicationScoped
public class ChosenPhotos {
  private static final String PARKING = "parking";
  private static final String PARKED = "parked.";
  private static final int SLOTS = 3;
  private static final String CAPTION = ".caption";
  private static final String ALT = ".alt";

  private static final String FIRST = "photo1";

  /** The one field of a form that a phone may have kept since before there were several. */
  private static final String ALONE = "photo";

  /** A second field of the first one, which opens the camera of a phone. */
  private static final String CAMERA = ".camera";

  private final ParkedPhotos parked;
  private final ReadyPhotos ready;
  private final PhotoSpace space;
  private final CurrentActor current;

  ChosenPhotos(ParkedPhotos parked, ReadyPhotos ready, PhotoSpace space, CurrentActor current) {
    this.parked = parked;
    this.ready = ready;
    this.space = space;
    this.current = current;
  }

  /** Where the photos of a form wait; a form with one field alone is known by its own id. */
  private static UUID parking(SentForm sent) {
    return sent.files(ALONE).isEmpty() ? sent.id(PARKING) : sent.id("id");
  }

  /** One file to choose, with what is said of it. */
  public record Slot(Field file, Field caption, Field alt) {
    /** What has something to correct stands open. */
    public boolean isOpen() {
      return !caption.getValue().isEmpty()
          || !alt.getValue().isEmpty()
          || caption.isFailed()
          || alt.isFailed();
    }

    public boolean isFailed() {
      return file.isFailed() || caption.isFailed() || alt.isFailed();
    }
  }

  /** One that is here already. */
  public record Kept(Parked photo, Field caption, Field alt) {}

  /** All of a form. */
  public record Fields(String parking, List<Slot> slots, List<Kept> kept) {
    public Slot getFirst() {
      return slots.get(0);
    }

    /** The others, which seldom are needed. */
    public List<Slot> getMore() {
      return slots.subList(1, slots.size());
    }

    public boolean isMoreOpen() {
      return getMore().stream().anyMatch(slot -> slot.isOpen() || slot.isFailed());
    }
  }

  /**
   * Adds the fields to a form.
   *
   * @param sent what arrived, null for a form that is shown the first time
   */
  public Form into(Form form, SentForm sent) {
    UUID parking = sent == null ? null : parking(sent);
    slots(form, Objects.requireNonNullElseGet(parking, UUID::randomUUID));
    // what is shown the first time has none
    return parking == null ? form : kept(form, parking);
  }

  private static Form slots(Form form, UUID parking) {
    form.add(Field.of(PARKING, "").hidden().value(parking.toString()));
    for (int slot = 1; slot <= SLOTS; slot++) {
      form.add(Field.of("photo" + slot, slot == 1 ? "Choose photos" : "Another photo").aside());
      words(form, "photo" + slot, PhotoWords.NONE);
    }
    return form;
  }

  private Form kept(Form form, UUID parking) {
    parked.of(actor(), parking).forEach(one -> words(form, name(one), one.words()));
    return form;
  }

  private static String name(Parked one) {
    return PARKED + one.id();
  }

  private static void words(Form form, String name, PhotoWords words) {
    form.add(caption(name + CAPTION).value(words.caption()).aside());
    form.add(alt(name + ALT).value(words.alt()).aside());
  }

  static Field caption(String name) {
    return Field.of(name, "Caption (optional)").maxLength(PhotoWords.CAPTION);
  }

  static Field alt(String name) {
    return Field.of(name, "What can be seen? (optional)")
        .hint("For members who cannot see the photo. If it is empty, we say what the photo is of.")
        .maxLength(PhotoWords.ALT);
  }

  private Actor actor() {
    return current.get();
  }

  /** How much the reader uses of their space, in words. */
  public String getSpace() {
    return space.of(actor().memberId()).said();
  }

  /** What a template shows of a form with these fields. */
  public Fields of(Form form) {
    String parking = form.field(PARKING).getValue();
    List<Slot> slots =
        slots()
            .map(
                name ->
                    new Slot(form.field(name), form.field(name + CAPTION), form.field(name + ALT)))
            .toList();
    boolean any = form.getFields().stream().anyMatch(f -> f.getName().startsWith(PARKED));
    List<Parked> all = any ? parked.of(actor(), SentForm.readId(parking)) : List.of();
    List<Kept> kept =
        all.stream()
            .filter(one -> form.find(name(one) + CAPTION).isPresent())
            .map(one -> new Kept(one, form.field(name(one) + CAPTION), form.field(name(one) + ALT)))
            .toList();
    return new Fields(parking, slots, kept);
  }

  /**
   * Parks what was chosen, and does what was said of what is parked. Pictures are made ready
   * without holding a thread: call it outside of transactions and before anything else can refuse
   * the form.
   *
   * @return what is wrong with some of it, for the form
   */
  public Uni<List<Remark>> take(SentForm sent) {
    List<Path> chosen = chosen(sent);
    return Awaited.of(ready.of(actor(), chosen))
        .map(made -> take(sent, made))
        .onFailure(PicturesBusy.class)
        .recoverWithItem(
            e -> {
              String detail = e.getMessage() + " Please choose the photos again.";
              return List.of(Remark.error(RemarkId.PICTURES_BUSY, "/" + FIRST, detail));
            });
  }

  /** Those that are not here yet; the first so many, as the others find no place anyway. */
  private List<Path> chosen(SentForm sent) {
    UUID parking = parking(sent);
    return parking == null
        ? List.of()
        : slots()
            .flatMap(slot -> files(sent, slot).stream())
            .filter(file -> !parked.knows(id(parking, file)))
            .limit(ReportLimits.PHOTOS)
            .toList();
  }

  private static Stream<String> slots() {
    return IntStream.rangeClosed(1, SLOTS).mapToObj(slot -> "photo" + slot);
  }

  private UUID id(UUID parking, Path file) {
    try {
      return ParkedPhotos.id(actor(), parking, file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<Remark> take(SentForm sent, Map<Path, ReadyPhotos.Outcome> made) {
    List<Remark> wrong = new ArrayList<>();
    UUID parking = parking(sent);
    if (parking == null) {
      return wrong;
    }
    for (Parked one : parked.of(actor(), parking)) {
      if (Boolean.TRUE.equals(sent.flag(name(one) + ".remove"))) {
        parked.remove(actor(), one.id());
      } else if (sent.values().containsKey(name(one) + CAPTION)) {
        noting(
            wrong,
            "/" + name(one).replace('.', '/'),
            at -> parked.say(actor(), one.id(), words(sent, name(one)).checked(at)));
      }
    }
    slots().forEach(slot -> take(sent, parking, slot, made, wrong));
    return wrong;
  }

  private void take(
      SentForm sent,
      UUID parking,
      String slot,
      Map<Path, ReadyPhotos.Outcome> made,
      List<Remark> wrong) {
    PhotoWords words = words(sent, slot);
    int before = wrong.size();
    List<Path> files = files(sent, slot);
    for (Path file : files) {
      PhotoWords of = words;
      noting(wrong, "/" + slot, at -> park(parking, file, made.get(file), of.checked(at)));
      // a field that took several files says something of the first
      words = PhotoWords.NONE;
    }
    if (!files.isEmpty() && wrong.size() == before) {
      sent.forget(slot + CAPTION);
      sent.forget(slot + ALT);
    }
  }

  private static List<Path> files(SentForm sent, String slot) {
    return Stream.of(slot + CAMERA, slot, slot.equals(FIRST) ? ALONE : "")
        .flatMap(field -> sent.files(field).stream())
        .toList();
  }

  private static PhotoWords words(SentForm sent, String name) {
    return new PhotoWords(sent.text(name + CAPTION), sent.text(name + ALT));
  }

  /** What is told of a photo as such stands at the field it came from. */
  private static void noting(List<Remark> wrong, String at, Consumer<String> deed) {
    try {
      deed.accept(at);
    } catch (PictureRefused e) {
      wrong.add(Remark.error(RemarkId.PICTURE_UNUSABLE, at, e.getMessage()));
    } catch (EntryRefused e) {
      e.remarks().stream()
          .map(remark -> remark.field().startsWith(at + "/") ? remark : remark.at(at))
          .forEach(wrong::add);
    }
  }

  private void park(UUID parking, Path file, ReadyPhotos.Outcome made, PhotoWords words) {
    UUID id = id(parking, file);
    if (!parked.knows(id)) {
      if (made == null) {
        throw ParkedPhotos.tooMany();
      }
      parked.park(actor(), parking, id, made.kept(), words);
    }
  }

  /** The fields of a form whose photos are parked already. */
  Form at(UUID parking) {
    return kept(slots(new Form(), parking), parking);
  }

  /** Adds the photos of a form to what is there already. */
  void addTo(SentForm sent, UUID entry, Instant at) {
    QuarkusTransaction.joiningExisting().run(() -> parked.addTo(actor(), parking(sent), entry, at));
  }

  /** Whether the form came with a photo, now or before. */
  public boolean any(SentForm sent) {
    // what came a second time is no longer parked
    return slots().anyMatch(slot -> !files(sent, slot).isEmpty())
        || !parked.of(actor(), parking(sent)).isEmpty();
  }

  /**
   * Stores what the form says with its photos, all or nothing.
   *
   * @param deed stores the entry
   */
  public <T> T store(SentForm sent, Supplier<T> deed, Function<T, Made> made) {
    return QuarkusTransaction.joiningExisting()
        .call(
            () -> {
              T stored = deed.get();
              Made entry = made.apply(stored);
              parked.addTo(actor(), parking(sent), entry.id(), entry.at());
              return stored;
            });
  }

  /**
   * What of a stored entry its photos need.
   *
   * @param at when it was posted, so that its first photos are no later change
   */
  public record Made(UUID id, Instant at) {}
}
