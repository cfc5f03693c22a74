package club.emberwell.consensus;

import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.Success;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.member.Members.Named;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Says of every number of a range which voices, formula and source made it. */
final class Explain {
  private static final String OWN_RULE = "A rule of this project, no outside source.";

  private Explain() {}

  /** Members whose names an explanation needs. */
  static Set<Long> members(Range range) {
    Set<Long> members = new TreeSet<>();
    spreads(range)
        .forEach(
            spread -> {
              for (long member : spread.voices().members()) {
                members.add(member);
              }
              for (long member : spread.aside().members()) {
                members.add(member);
              }
            });
    return members;
  }

  /**
   * Opens a range.
   *
   * @param people members by their number
   */
  static Explanation.All of(RangeDetail detail, Map<Long, Named> people) {
    List<Explanation.Voices> voices =
        spreads(detail.range()).stream().map(spread -> voices(spread, people)).toList();
    return new Explanation.All(numbers(detail), voices);
  }

  private static List<Spread> spreads(Range range) {
    List<Spread> spreads = new ArrayList<>();
    if (!range.dose().isEmpty()) {
      spreads.add(range.dose());
    }
    spreads.addAll(range.settings());
    return spreads;
  }

  private static Explanation.Voices voices(Spread spread, Map<Long, Named> people) {
    List<Explanation.Voice> voices = new ArrayList<>();
    add(spread.voices(), false, people, voices);
    add(spread.aside(), true, people, voices);
    voices.sort(
        Comparator.comparingDouble(Explanation.Voice::value)
            .thenComparing(Explanation.Voice::handle));
    return new Explanation.Voices(spread.measure(), voices);
  }

  private static void add(
      VoiceSet set, boolean aside, Map<Long, Named> people, List<Explanation.Voice> into) {
    for (int i = 0; i < set.size(); i++) {
      Named member = people.getOrDefault(set.members()[i], Named.NOBODY);
      into.add(new Explanation.Voice(member, set.values()[i], set.trials()[i], aside));
    }
  }

  private static List<Explanation> numbers(RangeDetail detail) {
    List<Explanation> all = new ArrayList<>();
    Range range = detail.range();
    all.add(dose(range));
    all.add(voice(range));
    spreads(range).forEach(spread -> all.addAll(spread(range, spread)));
    range.success().map(Explain::success).ifPresent(all::add);
    all.add(evidence(range));
    ExplainFindings.add(detail, all);
    return List.copyOf(all);
  }

  private static Explanation dose(Range range) {
    DoseFormula formula = DoseFormula.of(range.key().process().doseKind());
    return new Explanation(
        "dose",
        formula.title() + " of each trial, from its own settings.",
        formula.text(),
        formula.source(),
        stated(range.dose()),
        formula.caveats());
  }

  private static Explanation voice(Range range) {
    return new Explanation(
        "voices",
        "Each member counts once: the median of the member's right trials.",
        "",
        OWN_RULE + " Pooling trials makes intervals far too narrow.",
        counted(range.counts().voices(), "member", "members")
            + " with right results, "
            + counted(range.counts().trials(), "trial", "trials")
            + " in "
            + counted(range.counts().reports(), "report", "reports"),
        List.of());
  }

  private static List<Explanation> spread(Range range, Spread spread) {
    String path =
        spread.measure() == range.dose().measure() ? "dose" : "settings." + spread.measure().code();
    String counts =
        counted(spread.voices().size(), "voice", "voices")
            + " from "
            + counted(spread.n(), "right trial", "right trials");
    List<Explanation> all = new ArrayList<>();
    if (spread.quantiles().isPresent()) {
      all.add(
          new Explanation(
              path + ".median",
              "Quantiles over voices, type 8.",
              "Q(p) = x(j) + g (x(j+1) - x(j)), j = floor((n + 1/3) p + 1/3), g = the rest",
              "Hyndman & Fan, The American Statistician 50 (1996) 361-365",
              counts,
              List.of()));
    }
    spread
        .medianInterval()
        .ifPresent(
            interval ->
                all.add(
                    new Explanation(
                        path + ".medianLow",
                        "Order-statistic interval of the middle, true coverage "
                            + tenths(interval.coverage())
                            + " %.",
                        "from the l-th smallest to the l-th largest voice",
                        "Conover, Practical Nonparametric Statistics, section 3.2 (from memory)",
                        counts,
                        List.of("It says how well the middle is known, not where peers lie."))));
    spread
        .nextMember()
        .ifPresent(
            band ->
                all.add(
                    new Explanation(
                        path + ".nextLow",
                        "Where the first right test of a further member would be, with "
                            + Figures.percent(band.coverage())
                            + " chance. Each right test weighs 1 / (right tests of its member)."
                            + " Below 9 members it runs from the least to the largest.",
                        "place of a test = (weight before it + half its own + 1/2) / (m + 1)",
                        "Wilks, Annals of Mathematical Statistics 12 (1941) 91-96; that it holds for"
                            + " several tests a member is a simulation of this project",
                        together(spread),
                        List.of("Values set aside are in it."))));
    if (spread.aside().size() > 0) {
      all.add(
          new Explanation(
              path + ".aside",
              "Set aside, drawn hollow and counted apart: modified z beyond 3.5 on logarithms.",
              "z = 0.6745 (ln x - median) / MAD",
              "Iglewicz & Hoaglin, How to Detect and Handle Outliers (1993)",
              counted(spread.aside().size(), "voice", "voices")
                  + " of "
                  + (spread.aside().size() + spread.voices().size()),
              List.of("Perhaps a slip of the unit, perhaps an honest exception.")));
    }
    return all;
  }

  /** All right trials that state it, of which some may be set aside. */
  private static String stated(Spread spread) {
    int aside = spread.aside().trialCount();
    return counted(spread.n() + aside, "right trial states", "right trials state")
        + " it"
        + (aside == 0 ? "" : ", " + aside + " of them set aside");
  }

  /** Those set aside counted in. */
  private static String together(Spread spread) {
    return counted(spread.voices().size() + spread.aside().size(), "member", "members")
        + " with "
        + counted(spread.n() + spread.aside().trialCount(), "right trial", "right trials");
  }

  private static String apart(Success.Cells cells) {
    return cells.cells() == 0
        ? ""
        : "; counted apart: "
            + cells.right()
            + " right of "
            + counted(cells.cells(), "cell of test grids", "cells of test grids");
  }

  private static Explanation success(Success success) {
    return new Explanation(
        "success.share",
        "Mean of the members' own shares of right trials; Wilson interval with n = members.",
        "(p + z²/2n ± z sqrt(p(1-p)/n + z²/4n²)) / (1 + z²/n), z = 1.96",
        "Wilson, JASA 22 (1927) 209-212",
        success.share().map(share -> share.members() + " members, ").orElse("")
            + success.right()
            + " right of "
            + counted(success.trials(), "trial", "trials")
            + apart(success.cells()),
        List.of("People post what worked more than what failed."));
  }

  private static Explanation evidence(Range range) {
    return new Explanation(
        "evidence",
        "One voice, two voices, sparse 3-5, some 6-8, good from 9 where the interval of the middle"
            + " spans at most twofold, strong from 20 where it spans at most 1.5-fold, split where"
            + " camps are found.",
        "",
        OWN_RULE,
        counted(range.counts().voices(), "voice", "voices"),
        List.of());
  }

  static String counted(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  private static String tenths(double share) {
    return Double.toString(Math.round(share * 1000) / 10.0);
  }
}
