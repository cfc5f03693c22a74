package club.emberwell.catalog.store;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Term;
import java.util.List;

/**
 * What a merge would move.
 *
 * @param loser the term that would redirect
 * @param winner the term that would stand for it
 * @param children terms that would come to lie below the winner
 * @param spellings of the loser that would mean the winner
 * @param cautionsGained that would newly go with entries of the loser
 * @param cautionsLost that would no longer go with them
 */
public record MergePreview(
    Term loser,
    Term winner,
    List<Term> children,
    List<String> spellings,
    List<CautionRule> cautionsGained,
    List<CautionRule> cautionsLost) {}
