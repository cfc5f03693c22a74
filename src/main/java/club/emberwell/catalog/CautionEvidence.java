package club.emberwell.catalog;

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
 */
public record CautionEvidence(
    String source,
    String jurisdiction,
    String confidence,
    boolean disputed,
    @Nullable String dispute) {}
