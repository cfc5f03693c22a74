package club.emberwell.catalog;

import java.util.Optional;

/**
 * A caution that goes with some work.
 *
 * @param because the material or coating in hand through which it goes; empty for a general one
 */
public record Caution(CautionRule rule, Optional<Term> because) {}
