package club.emberwell.laser.safety;

import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.remark.Coded;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * How what is printed on glasses stands to what a beam needs at least. Never a promise: see {@link
 * EyeLimits#CLOSING}.
 *
 * @param because one sentence with both numbers
 */
public record Coverage(Cover verdict, String because) {
  /** The worst news first. */
  public enum Cover implements Coded {
    NOT_COVERED("not-covered", "not covered at this wavelength"),
    BELOW_MINIMUM("below-minimum", "below the calculated minimum"),
    NO_NUMBER("no-number", "no number"),
    COVERED("covered", "covered");

    private final String code;
    private final String label;

    Cover(String code, String label) {
      this.code = code;
      this.label = label;
    }

    @Override
    public String code() {
      return code;
    }

    public String label() {
      return label;
    }
  }

  /** By what is printed, as printed, against needs that were rounded up. */
  public static Coverage of(Collection<Protection> printed, EyeMinima need, NumberStyle style) {
    double nm = need.beam().nm();
    List<Protection> there = printed.stream().filter(p -> p.covers(nm)).toList();
    return new Judge(need, style, there).judge();
  }

  /** Goes from the worst that can be said to the best. */
  private record Judge(EyeMinima need, NumberStyle style, List<Protection> there) {
    Coverage judge() {
      if (there.isEmpty()) {
        return new Coverage(
            Cover.NOT_COVERED,
            "Nothing printed holds for %s nm.".formatted(number(need.beam().nm())));
      }
      Set<Condition> unmarked = unmarked();
      if (!unmarked.isEmpty()) {
        return new Coverage(Cover.NOT_COVERED, "Not marked for %s.".formatted(named(unmarked)));
      }
      if (need.average() == null) {
        return new Coverage(
            Cover.NO_NUMBER,
            "The tables read here give no limit for %s nm.".formatted(number(need.beam().nm())));
      }
      double given = there.stream().mapToDouble(Protection::density).max().orElseThrow();
      double least = Upward.density(need.average().opticalDensity());
      if (given < Math.max(least, need.density() == null ? 0 : need.density())) {
        return densities(
            Cover.BELOW_MINIMUM, given, need.density() == null ? least : need.density());
      }
      return scales(given);
    }

    /** Letters the beam needs and the scale numbers printed for this wavelength lack. */
    private Set<Condition> unmarked() {
      Set<Condition> lacking = new TreeSet<>();
      if (!scaleNumbers().isEmpty()) {
        lacking.addAll(need.letters());
        lacking.removeAll(scaleNumbers().keySet());
      }
      return lacking;
    }

    private static String named(Set<Condition> letters) {
      return letters.stream()
          .map(letter -> letter + " (" + letter.label() + ")")
          .collect(Collectors.joining(", "));
    }

    /** The highest scale number printed for each letter. */
    private Map<Condition, Integer> scaleNumbers() {
      Map<Condition, Integer> highest = new EnumMap<>(Condition.class);
      for (Protection one : there) {
        one.conditions().forEach(c -> highest.merge(c, one.scaleNumber(), Math::max));
      }
      return highest;
    }

    private Coverage scales(double given) {
      Map<Condition, Integer> printed = scaleNumbers();
      for (Condition letter : printed.isEmpty() ? Set.<Condition>of() : known()) {
        En207.Scale least = need.scales().get(letter);
        if (least == null) {
          return new Coverage(
              Cover.BELOW_MINIMUM,
              "%s would need more than the highest scale number.".formatted(letter));
        }
        if (printed.get(letter) < least.number()) {
          return new Coverage(
              Cover.BELOW_MINIMUM,
              "%s LB%d printed, at least LB%d calculated."
                  .formatted(letter, printed.get(letter), least.number()));
        }
      }
      if (need.density() == null) {
        return new Coverage(
            Cover.NO_NUMBER,
            "Pulses can need more than their average power tells (at least OD %s): frequency and"
                    .formatted(number(Upward.density(need.average().opticalDensity())))
                + " pulse duration are not known, or the tables do not know such pulses.");
      }
      boolean scaleOnly = there.stream().allMatch(p -> p.opticalDensity() == null);
      if (scaleOnly && !need.scaled()) {
        return new Coverage(
            Cover.NO_NUMBER,
            "A scale number is compared by the diameter of the beam, which is not known.");
      }
      return densities(Cover.COVERED, given, need.density());
    }

    /** The letters of which it can be told how high their number must be. */
    private Set<Condition> known() {
      Set<Condition> known = new TreeSet<>();
      if (need.scaled()) {
        known.add(Condition.D);
        if (need.beam().pulses() != null) {
          known.addAll(need.letters());
        }
      }
      return known;
    }

    private Coverage densities(Cover verdict, double given, double least) {
      String printed =
          there.stream().anyMatch(p -> p.opticalDensity() != null && p.density() == given)
              ? "OD %s printed".formatted(number(given))
              : "LB%s printed".formatted(number(given));
      return new Coverage(
          verdict, "%s, at least OD %s calculated.".formatted(printed, number(least)));
    }

    private String number(double value) {
      return QuantityPrinter.number(value, style);
    }
  }
}
