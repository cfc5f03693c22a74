package club.emberwell.tag;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Reading;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Gives things their tags and finds things by them. A code is given once and never again. */
@ApplicationScoped
public class Tags {
  /** Draws at one length; so many hits on codes that are taken say that the length is used up. */
  private static final int DRAWS = 8;

  private final TagRepository rows;
  private final List<PublicSide> sides;
  private final SecureRandom random = new SecureRandom();

  Tags(TagRepository rows, @All List<PublicSide> sides) {
    this.rows = rows;
    this.sides = sides;
  }

  /** The tag of an entry: the one it has, else a new one, in the caller's transaction. */
  @Transactional(Transactional.TxType.MANDATORY)
  public TagCode give(UUID entry) {
    Optional<TagCode> there = rows.of(entry);
    if (there.isPresent()) {
      return there.get();
    }
    for (int length = TagCode.SHORTEST; length <= TagCode.LONGEST; length++) {
      for (int draw = 0; draw < DRAWS; draw++) {
        rows.offer(TagCode.drawn(length, random), entry);
        Optional<TagCode> given = rows.of(entry);
        if (given.isPresent()) {
          return given.get();
        }
      }
    }
    throw new IllegalStateException("no tag is left");
  }

  /**
   * The tag that stands on a label of an entry, if that code was never given here, else a new one;
   * in the caller's transaction.
   *
   * @param label as it was printed, or null
   */
  @Transactional(Transactional.TxType.MANDATORY)
  public TagCode giveBack(UUID entry, String label) {
    Optional<TagCode> printed = label == null ? Optional.empty() : TagCode.read(label).value();
    printed.ifPresent(code -> rows.offer(code, entry));
    return give(entry);
  }

  /** The tag of an entry, if it has one. */
  @Transactional
  public Optional<TagCode> of(UUID entry) {
    return rows.of(entry);
  }

  /** What a code leads to, whoever may see that; empty where it leads to nothing (any more). */
  @Transactional
  public Optional<Tagged> find(TagCode code) {
    return rows.find(code).map(entry -> Tagged.of(code, entry));
  }

  /**
   * What a code leads to, as it was typed or scanned.
   *
   * @throws EntryRefused for what is no code
   * @throws EntryUnknown for a code that leads to nothing
   */
  @Transactional
  public Tagged find(String typed) {
    Reading<TagCode> read = TagCode.read(typed);
    TagCode code = read.value().orElseThrow(() -> new EntryRefused(read.at("/tag").remarks()));
    return find(code).orElseThrow(() -> new EntryUnknown("tag"));
  }

  /** The report that everybody may ask for instead of the thing. */
  @Transactional
  public Optional<UUID> report(Tagged tagged) {
    return sides.stream()
        .filter(side -> side.kind() == tagged.kind())
        .findFirst()
        .flatMap(side -> side.report(tagged.id()));
  }
}
