package club.emberwell.desk;

import java.time.Instant;

/**
 * What a rule noticed about an item.
 *
 * @param mode note or hold: what the rule did
 * @param state open, seen or undone
 */
public record RuleNote(
    long id, RuleCode rule, Item item, String detail, String mode, String state, Instant at) {}
