package club.emberwell.catalog;

import org.jspecify.annotations.Nullable;

/**
 * Who says what a caution says.
 *
 * @param name of the list, rule, study or text
 * @param jurisdiction whose rule or list it is; "general" where none
 * @param says what this source says by itself, where the others say less, more or the contrary
 */
public record CautionSource(
    String name, SourceKind kind, String jurisdiction, @Nullable String says) {
  /** The source as one reads it in a line. */
  public String cited() {
    return says == null ? name : name + " (" + says + ")";
  }
}
