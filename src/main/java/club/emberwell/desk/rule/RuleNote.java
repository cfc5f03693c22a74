package club.emberwell.desk.rule;

import club.emberwell.entry.Entry;
import java.time.Instant;

/**
 * What a rule noticed about an item.
 *
 * @param mode note or hold: what the rule did
 * @param state open, seen or undone
 */
public record RuleNote(
    long id, RuleCode rule, Entry item, String detail, String mode, String state, Instant at) {}
