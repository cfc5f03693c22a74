package club.emberwell.consensus;

import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.answer.Start;
import club.emberwell.consensus.answer.Why;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.dose.EqualDosePair;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Figures;
import club.emberwell.stats.Ratio;
import java.util.List;

/** Explanations of what goes beyond the core: window, machines, camps, contrasts, transfer. */
final class ExplainFindings {
  private ExplainFindings() {}

  static void add(RangeDetail detail, List<Explanation> into) {
    detail.findings().ifPresent(findings -> add(findings, into));
    detail.borrowing().ifPresent(borrowing -> into.add(borrowed(borrowing)));
    detail.forMachine().ifPresent(mine -> into.add(forMachine(mine)));
    detail.answer().flatMap(Answer::start).ifPresent(start -> into.add(start(start)));
    detail.answer().flatMap(Answer::factor).ifPresent(factor -> into.add(factor(factor)));
  }

  private static void add(RangeDetail.Findings findings, List<Explanation> into) {
    into.add(window(findings.window()));
    into.add(between(findings.between()));
    into.add(camps(findings.disagreement()));
    if (!findings.contrasts().isEmpty()) {
      into.add(contrasts(findings.contrasts()));
    }
  }

  private static Explanation window(Window window) {
    Window.Counts counts = window.counts();
    return new Explanation(
        "window",
        "For each edge a Firth-penalised logit within and between members: ln dose minus the"
            + " member's own mean, and that mean minus the mean over members. Its 95 % interval"
            + " comes from leaving out one member at a time. The chance of right is averaged over"
            + " how members differ, as far as the slope does not hold that yet.",
        "edge = exp(mean - a / b within), se = sqrt((m-1)/m sum (edge_-i - edge)²), t with m-1",
        "Mundlak, Econometrica 46 (1978) 69-85; Firth, Biometrika 80 (1993) 27-38; MacKinnon,"
            + " Nielsen & Webb, J. Applied Econometrics 38 (2023) 671-694 (from memory)",
        counts.tooLittle()
            + " too little, "
            + counts.right()
            + " right, "
            + counts.tooMuch()
            + " too much from "
            + Explain.counted(counts.members(), "member", "members")
            + "; without a dose: "
            + counts.undosed()
            + ", set aside with their member: "
            + counts.aside()
            + ", set aside one by one (five times off or more, modified z beyond 3.5): "
            + counts.strays(),
        List.of(
            "The edges are those of a typical member.",
            "An edge is told from 8 members where its interval spans at most threefold, else it is"
                + " rough.",
            "It is not known with fewer than 3 tests or 2 members beyond it."));
  }

  private static Explanation between(BetweenMembers between) {
    return new Explanation(
        "between",
        "Members' mean ln doses of right trials; variance between by Paule and Mandel, variance"
            + " within pooled over each member's repeats; interval by the Q-profile.",
        "factor = exp(tau)",
        "Paule & Mandel, J. Res. NBS 87 (1982) 377-385; Viechtbauer, Statistics in Medicine 26"
            + " (2007) 37-52",
        Explain.counted(between.members(), "member", "members")
            + ", "
            + Explain.counted(between.trials(), "right trial", "right trials")
            + ", "
            + between.repeats()
            + " of them beyond the first of their member",
        between.missing().map(List::of).orElse(List.of()));
  }

  private static Explanation camps(Disagreement found) {
    return new Explanation(
        "camps",
        "Best split of the voices by each recorded property, judged by permutation and Holm's rule;"
            + " then the dip test from 15 voices, both at 5 %.",
        "",
        "Fisher, JASA 53 (1958) 789-798; Holm, Scand. J. Statistics 6 (1979) 65-70; Hartigan &"
            + " Hartigan, Annals of Statistics 13 (1985) 70-84",
        Explain.counted(found.voices(), "voice", "voices")
            + (found.tested().isEmpty() ? "" : "; tried: " + String.join(", ", found.tested())),
        List.of());
  }

  private static Explanation contrasts(List<Contrast> contrasts) {
    long paired = contrasts.stream().filter(c -> c.ratio().kind() == Ratio.Kind.PAIRED).count();
    return new Explanation(
        "contrasts",
        "Ratio of geometric mean doses with a t interval on logarithms; members who did both are"
            + " compared with themselves on the same work, from 3 such members; p-values by Holm's"
            + " rule.",
        "ratio = exp(mean(ln a - ln b))",
        "Student's paired t; Welch, Biometrika 34 (1947) 28-35; Holm, Scand. J. Statistics 6 (1979)"
            + " 65-70",
        Explain.counted(contrasts.size(), "comparison", "comparisons")
            + ", "
            + paired
            + " within members",
        List.of("Between different members everything else may differ too."));
  }

  private static Explanation borrowed(Borrowing borrowing) {
    return new Explanation(
        "borrowed",
        "The own mean ln dose drawn toward its relatives'.",
        "w own + (1 - w) parent, w = tau² / (tau² + v)",
        "Robinson, Statistical Science 6 (1991) 15-51",
        Explain.counted(borrowing.voices(), "own voice", "own voices")
            + ", "
            + Explain.counted(borrowing.lenders().members(), "member", "members")
            + " on "
            + borrowing.lenders().relatives()
            + " relatives",
        List.of("It stands beside the own value and never replaces it."));
  }

  private static Explanation start(Start start) {
    return new Explanation(
        "answer.start",
        "The right test of a member on the machine most like this one, nearest to the middle. Its"
            + " other settings are kept, its speed is solved for the dose within the machine's"
            + " limits, and rounded to at most 2.5 %.",
        "v = P n / (F h), for line work v = P n / E_l",
        "Own rule. The dose is from " + start.basis().words() + ".",
        "1 test",
        start.why().stream().map(Why::sentence).toList());
  }

  private static Explanation factor(OnThisWork known) {
    return new Explanation(
        "answer.factor",
        "How this machine stands to those of other members in all that came out right, in one"
            + " wavelength band and regime: works crossed with machines, the factor drawn toward 1"
            + " where it rests on little. For this work every right test is divided by the factor"
            + " of its own machine and multiplied by yours; the median of voices of that is "
            + Figures.two(known.times())
            + " times the middle.",
        "ln dose = work + machine + rest; interval = effect ± t times the error of prediction",
        "Henderson, Biometrics 31 (1975) 423-447; Robinson, Statistical Science 6 (1991) 15-51"
            + " (from memory); that the interval holds is a simulation of this project",
        Explain.counted(known.factor().works(), "work", "works") + " shared with other members",
        List.of(
            "It never crosses wavelength bands or regimes.",
            "Once this work came out right on your machine, your own results take its place."));
  }

  private static Explanation forMachine(OnMyMachine mine) {
    int judged = mine.judgement().verdicts().values().stream().mapToInt(Integer::intValue).sum();
    return new Explanation(
        "forMachine",
        "Each voice's typical trial is judged against this machine; the verdict is the one at least"
            + " half of them reach. Lines of equal nominal dose, cut to the machine's limits.",
        "v = P n / (F h), for line work v = P n / E_l",
        "Bounds: rules of this project. " + EqualDosePair.MEANS,
        Explain.counted(judged, "voice", "voices") + " judged",
        mine.judgement().reasons());
  }
}
