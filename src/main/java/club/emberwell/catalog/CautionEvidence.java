package club.emberwell.catalog;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Why a caution is believed.
 *
 * @param source where it is published, or "common practice, no source"
 * @param jurisdiction whose rule or list it is; "general" where none
 * @param confidence {@code read} = source read, {@code second-hand} = quoted elsewhere, {@code
 *     memory} = from memory, {@code judgement} = our own conclusion
 * @param disputed whether published sources contradict each other
 * @param dispute who says what; null unless disputed
 * @param sources the same as {@code source}, one by one, where somebody wrote them so
 */
public record CautionEvidence(
    String source,
    String jurisdiction,
    String confidence,
    boolean disputed,
    @Nullable String dispute,
    List<CautionSource> sources) {
  /** A file names the sources one by one; a member may write them as a text. */
  public CautionEvidence {
    sources = sources == null ? List.of() : List.copyOf(sources);
    if (source == null && !sources.isEmpty()) {
      source = sources.stream().map(CautionSource::cited).collect(Collectors.joining("; "));
    }
  }

  /** What single sources say of it by themselves: the sides where they disagree. */
  public List<CautionSource> sides() {
    return sources.stream().filter(source -> source.says() != null).toList();
  }
}
