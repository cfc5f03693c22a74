package club.emberwell.laser;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** Finds an enum's value by its word in the API, however a person cases or joins it. */
final class Codes {
  private Codes() {}

  /** Accepts {@code too-little}, {@code too little} and {@code Too_Little} alike; empty if none. */
  static <E extends Enum<E>> Optional<E> find(E[] values, Function<E, String> code, String text) {
    if (text == null) {
      return Optional.empty();
    }
    String wanted =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .strip()
            .toLowerCase(Locale.ROOT)
            .replaceAll("[\\s_-]+", "-");
    for (E value : values) {
      if (code.apply(value).equals(wanted)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}
