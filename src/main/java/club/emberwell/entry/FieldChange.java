package club.emberwell.entry;

/**
 * What one field said before and after; null = nothing.
 *
 * @param field pointer as in the entry, e.g. {@code /settings/speed}
 */
public record FieldChange(String field, String before, String after) {}
