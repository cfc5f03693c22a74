package club.emberwell.consensus.range;

import club.emberwell.laser.Process;
import club.emberwell.search.query.Facet;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * The work of a range: what is done to what, as far as it decides which trials may share a range. A
 * value nobody stated, or that is not filed yet, is a value of its own and never a wildcard.
 *
 * @param parts what counts for the process, in the order in which it is said
 */
public record WorkKey(Map<Facet, Part> parts) {
  /** What counts besides process, wavelength band and regime (common practice, no source). */
  private static final Map<Process, List<Facet>> COUNTED =
      new EnumMap<>(
          Map.of(
              Process.SURFACE_ENGRAVING,
              List.of(Facet.MATERIAL, Facet.COATING, Facet.COLOUR),
              Process.DEEP_ENGRAVING,
              List.of(Facet.MATERIAL, Facet.COATING, Facet.COLOUR),
              Process.COATING_REMOVAL,
              List.of(Facet.COATING, Facet.COLOUR),
              Process.COLOUR_MARKING,
              List.of(Facet.MATERIAL, Facet.COATING, Facet.RESULT_COLOUR),
              Process.CUT,
              List.of(Facet.MATERIAL, Facet.THICKNESS),
              Process.SCORE,
              List.of(Facet.MATERIAL, Facet.COATING)));

  /**
   * One value.
   *
   * @param value as the facet has it
   * @param label what people call it
   */
  public record Part(String value, String label) {
    public boolean stated() {
      return !value.equals(Facet.NOT_GIVEN);
    }
  }

  public WorkKey {
    parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
  }

  /** The facets whose values keep works of this process apart. */
  public static List<Facet> counted(Process process) {
    return COUNTED.get(process);
  }

  public Optional<Part> part(Facet facet) {
    return Optional.ofNullable(parts.get(facet));
  }

  /** Everything but one part: relatives have it in common. */
  public WorkKey without(Facet facet) {
    Map<Facet, Part> rest = new LinkedHashMap<>(parts);
    rest.remove(facet);
    return new WorkKey(rest);
  }

  /** The same with another value of one part. */
  public WorkKey with(Facet facet, Part part) {
    Map<Facet, Part> changed = new LinkedHashMap<>(parts);
    changed.put(facet, part);
    return new WorkKey(changed);
  }

  /**
   * In words: "Stainless steel, powder coat, navy"; "Birch plywood, thickness not stated". That a
   * blank has no coating is usual and goes without saying.
   */
  public String words() {
    StringJoiner words = new StringJoiner(", ");
    parts.forEach(
        (facet, part) -> {
          if (part.stated()) {
            words.add(words.length() == 0 ? part.label() : lower(part.label()));
          } else if (said(facet)) {
            words.add(facet.label().toLowerCase(Locale.ROOT) + " not stated");
          }
        });
    return words.length() == 0 ? "Material not stated" : words.toString();
  }

  private boolean said(Facet facet) {
    boolean bare = part(Facet.COATING).filter(Part::stated).isEmpty();
    return facet != Facet.COATING && !(facet == Facet.COLOUR && bare);
  }

  static String lower(String label) {
    // MDF and 304 stay as they are
    boolean word = label.length() > 1 && Character.isLowerCase(label.charAt(1));
    return word ? Character.toLowerCase(label.charAt(0)) + label.substring(1) : label;
  }
}
