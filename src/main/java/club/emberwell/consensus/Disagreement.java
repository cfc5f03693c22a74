package club.emberwell.consensus;

import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Recorded;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Camps;
import club.emberwell.stats.DipTest;
import club.emberwell.stats.PermutationSplit;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Whether peers really disagree and why: {@link Camps} over the doses of the voices.
 *
 * @param voices whose dose was looked at
 * @param camps empty where none were found
 * @param property the recorded property that parts the camps; empty where none does
 * @param tested the properties that at least two voices differ in, in the words of pages
 * @param sentence the answer in words
 */
public record Disagreement(
    int voices,
    Optional<Camps> camps,
    Optional<Property> property,
    List<String> tested,
    String sentence) {

  /** A voice whose own trials differ in a property is left out for it. */
  private static final int MIXED = -2;

  static Disagreement of(Group group, Spread dose) {
    VoiceSet voices = positive(dose.voices());
    Map<Property, String[]> labels = labels(group, dose, voices);
    Map<String, String[]> byName = new LinkedHashMap<>();
    labels.forEach((property, names) -> byName.put(property.code(), names));
    Optional<Camps> camps = Camps.of(voices.values(), byName);
    Optional<Property> property =
        camps.flatMap(Camps::split).map(split -> Property.of(split.property()));
    List<String> tested = labels.keySet().stream().map(Property::label).toList();
    return new Disagreement(
        voices.size(), camps, property, tested, sentence(voices.size(), camps, property, tested));
  }

  public boolean found() {
    return camps.isPresent();
  }

  private static VoiceSet positive(VoiceSet voices) {
    boolean[] kept = new boolean[voices.size()];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = voices.values()[i] > 0;
    }
    return voices.keep(kept);
  }

  /** One label for each voice; null where the voice says nothing or several things. */
  private static Map<Property, String[]> labels(Group group, Spread dose, VoiceSet voices) {
    Dosed dosed = Dosed.of(group, dose);
    int[] voice = new int[dosed.size()];
    for (int i = 0; i < voice.length; i++) {
      voice[i] = dosed.right(i) ? Arrays.binarySearch(voices.members(), dosed.member(i)) : -1;
    }
    Map<Property, String[]> labels = new LinkedHashMap<>();
    for (Property property : Property.all()) {
      String[] names = labels(dosed, voice, voices.size(), property);
      if (Arrays.stream(names).filter(Objects::nonNull).distinct().count() > 1) {
        labels.put(property, names);
      }
    }
    return labels;
  }

  private static String[] labels(Dosed dosed, int[] voice, int voices, Property property) {
    int[] codes = new int[voices];
    Arrays.fill(codes, Integer.MIN_VALUE);
    int[] column = dosed.group().columns().property(property);
    for (int i = 0; i < voice.length; i++) {
      if (voice[i] >= 0) {
        int code = column[dosed.rows()[i]];
        boolean same = codes[voice[i]] == Integer.MIN_VALUE || codes[voice[i]] == code;
        codes[voice[i]] = same ? code : MIXED;
      }
    }
    return IntStream.of(codes)
        .mapToObj(code -> code < 0 ? null : dosed.group().columns().labels().label(property, code))
        .toArray(String[]::new);
  }

  private static String sentence(
      int voices, Optional<Camps> camps, Optional<Property> property, List<String> tested) {
    if (property.isPresent()) {
      PermutationSplit split = camps.flatMap(Camps::split).orElseThrow();
      return "There are two groups of settings, by "
          + property.get().label()
          + ": "
          + phrases(property.get(), split.high())
          + " took "
          + Figures.two(split.ratio())
          + " times the dose of "
          + phrases(property.get(), split.low())
          + " ("
          + split.highVoices()
          + " and "
          + split.lowVoices()
          + " members).";
    }
    if (camps.isPresent()) {
      return "There are two groups of settings. Nothing that was recorded explains them.";
    }
    String compared =
        tested.isEmpty()
            ? ""
            : " Compared were those who differ in " + String.join(", ", tested) + ".";
    String more =
        voices < DipTest.FEWEST ? " With " + DipTest.FEWEST + " members we can check more." : "";
    return "Are there two groups of settings? Not that we can see." + compared + more;
  }

  private static String phrases(Property property, List<String> values) {
    return String.join(
        " and ", values.stream().map(value -> Recorded.phrase(property, value)).toList());
  }
}
