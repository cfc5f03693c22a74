package club.emberwell.sample;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Cause;
import club.emberwell.entry.ComesBack;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Returned;
import club.emberwell.entry.Words;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.sample.SampleRepository.Standing;
import club.emberwell.tag.PublicSide;
import club.emberwell.tag.TagCode;
import club.emberwell.tag.Tags;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Keeps a member's test pieces, which nobody else sees. Every write is one transaction with its
 * revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class Samples implements Kind, ComesBack, PublicSide {
  private static final ListOrder MINE = ListOrder.newestFirst("samples", SampleLimits.PAGE);

  private static final Set<EntryKind> SAMPLES = Set.of(EntryKind.SAMPLE);
  private static final TypeReference<WrittenSample> SHAPE = new TypeReference<>() {};

  /** Words of a search that count. */
  private static final int WORDS = 8;

  private final SampleRepository samples;
  private final SampleReader reader;
  private final Tags tags;
  private final EntryLife life;

  Samples(SampleRepository samples, SampleReader reader, Tags tags, EntryLife life) {
    this.samples = samples;
    this.reader = reader;
    this.tags = tags;
    this.life = life;
  }

  /**
   * A sample that was just stored.
   *
   * @param created false where the same one was there already
   */
  public record Saved(Sample sample, boolean created) {}

  /**
   * Puts a sample away and gives it a tag.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Saved add(Actor actor, SamplePosting posting) {
    UUID author = EntryAccess.signedIn(actor);
    SampleReader.Read read = reader.read(actor, posting.written());
    if (life.isThere(posting.id(), EntryKind.SAMPLE, author)) {
      Sample there = named(actor, posting.id());
      if (!there.written().equals(read.written())) {
        throw EntryLife.taken(EntryKind.SAMPLE);
      }
      return new Saved(there, false);
    }
    requireRoom(author);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    Instant at = posting.at() == null ? Instant.now() : posting.at();
    NewEntry made = new NewEntry(id, EntryKind.SAMPLE, null, Origin.HERE, at);
    EntryEntity entry = life.begin(actor, made, SampleEntity.words(read.title(), read.written()));
    SampleEntity sample = new SampleEntity(entry, read.written());
    samples.persistAndFlush(sample);
    return new Saved(sample.toSample(actor.handle(), tags.give(id)), true);
  }

  /**
   * Writes a sample anew.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Sample revise(Actor actor, UUID id, int version, WrittenSample written) {
    EntryEntity entry = life.editable(actor, SAMPLES, id, version);
    SampleEntity sample = samples.whole(id).orElseThrow();
    SampleReader.Read read = reader.revised(actor, sample.written(), entry.title(), written);
    sample.take(read.written());
    life.rewritten(
        entry,
        SampleEntity.words(read.title(), read.written()),
        EntryAction.EDITED,
        Cause.now(actor, null));
    return sample.toSample(actor.handle(), tags.of(id).orElseThrow());
  }

  /** Takes a sample off the list; its tag is never given again. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, SAMPLES, id, version);
  }

  /**
   * One of the actor's samples.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Sample get(Actor actor, UUID id) {
    Sample sample = named(actor, id);
    if (!sample.entry().live()) {
      throw new EntryUnknown("sample");
    }
    return sample;
  }

  private Sample named(Actor actor, UUID id) {
    SampleRepository.Tagged found =
        samples.tagged(id).orElseThrow(() -> new EntryUnknown("sample"));
    EntryAccess.see(actor, found.sample().entry());
    return detached(actor, found);
  }

  private static Sample detached(Actor actor, SampleRepository.Tagged found) {
    return found.sample().toSample(actor.handle(), new TagCode(found.code()));
  }

  /**
   * The actor's samples that still stand, newest first.
   *
   * @param text words that must all stand in the tag, in where it is kept, in its notes or in the
   *     words of the work; null or blank = all
   */
  @Transactional
  public Slice<Sample> mine(Actor actor, String text, Part part) {
    UUID owner = EntryAccess.signedIn(actor);
    List<String> patterns = patterns(searched(text));
    return Slice.read(
            part, MINE, place -> samples.standing(owner, patterns, place), Standing::place)
        .map(Standing::id)
        .all(ids -> mine(actor, ids));
  }

  private static String searched(String text) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String read = in.text("/q", text, SampleLimits.SEARCH, false);
    if (in.failed()) {
      throw new EntryRefused(in.remarks());
    }
    return read == null ? "" : read;
  }

  private static List<String> patterns(String text) {
    return Arrays.stream(text.toLowerCase(Locale.ROOT).split("\\s+"))
        .limit(WORDS)
        .map(word -> "%" + word.replaceAll("[\\\\%_]", "\\\\$0") + "%")
        .toList();
  }

  /** Those of these that are the actor's and still stand, newest first. */
  @Transactional
  public List<Sample> mine(Actor actor, Collection<UUID> ids) {
    UUID owner = EntryAccess.signedIn(actor);
    return ids.isEmpty()
        ? List.of()
        : samples.standing(owner, ids).stream().map(found -> detached(actor, found)).toList();
  }

  @Override
  public EntryKind returning() {
    return EntryKind.SAMPLE;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    EntryEntity entry =
        life.comeBack(actor, EntryKind.SAMPLE, from, words -> words(brought(words, from.title())));
    samples.persist(new SampleEntity(entry, brought(from.written(), from.title()).written()));
    samples.flush();
    tags.giveBack(from.id(), from.beside().tag());
  }

  private SampleReader.Read brought(String words, String title) {
    return reader.brought(StoredJson.brought(words, SHAPE), title);
  }

  private static Words words(SampleReader.Read read) {
    return SampleEntity.words(read.title(), read.written());
  }

  private void requireRoom(UUID author) {
    if (samples.countOf(author) >= SampleLimits.PER_MEMBER) {
      String detail = "You have as many samples as fit: %d.".formatted(SampleLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.SAMPLES_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return SAMPLES;
  }

  @Override
  public EntryKind kind() {
    return EntryKind.SAMPLE;
  }

  @Override
  public Optional<UUID> report(UUID id) {
    return samples.report(id);
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    revise(actor, id, version, StoredJson.read(written, SHAPE));
  }
}
