package club.emberwell.api.consensus;

import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.Explanation;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How the numbers of a range came about.
 *
 * @param voices by measure: who stands behind it with what value
 */
record ExplainJson(List<Explanation> numbers, Map<String, List<VoiceJson>> voices) {

  /** One member's value of a measure, canonical unit. */
  record VoiceJson(MemberJson member, BigDecimal value, int trials, boolean aside) {
    static VoiceJson of(Explanation.Voice voice) {
      return new VoiceJson(
          MemberJson.of(voice.member().id(), voice.handle()),
          QuantityJson.number(voice.value()),
          voice.trials(),
          voice.aside());
    }
  }

  static ExplainJson of(Explanation.All all) {
    Map<String, List<VoiceJson>> voices = new LinkedHashMap<>();
    all.voices()
        .forEach(
            set ->
                voices.put(
                    set.measure().code(), set.voices().stream().map(VoiceJson::of).toList()));
    return new ExplainJson(all.numbers(), voices);
  }
}
