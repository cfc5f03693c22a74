package club.emberwell.catalog;

import org.jspecify.annotations.Nullable;

/**
 * An occupational exposure limit: what a hygienist compares air measurements with, nothing that
 * tells when a hobby workshop is free of danger.
 *
 * @param agent the substance
 * @param value printed with its unit, e.g. "5 ppm"
 * @param basis e.g. "ceiling", "8 h average", "15 min"
 * @param authority and rule
 * @param jurisdiction where the rule applies; null where the authority's name says it
 * @param year of the rule's table as far as known, else null
 * @param check how sure the value is: "from memory" or "read"
 */
public record ExposureLimit(
    String agent,
    String value,
    String basis,
    String authority,
    @Nullable String jurisdiction,
    @Nullable Integer year,
    String check) {}
