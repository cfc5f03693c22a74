package club.emberwell.laser;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Finds an enum's value by its word in the API, however a person cases or joins it. */
public final class Codes {
  private Codes() {}

  /** Accepts {@code too-little}, {@code too little} and {@code Too_Little} alike; empty if none. */
  static <E extends Enum<E>> Optional<E> find(E[] values, Function<E, String> code, String text) {
    return text == null
        ? Optional.empty()
        : Stream.of(values).filter(value -> code.apply(value).equals(folded(text))).findFirst();
  }

  /** The same for bare words. */
  public static Optional<String> find(List<String> words, String text) {
    return text == null
        ? Optional.empty()
        : words.stream().filter(word -> word.equals(folded(text))).findFirst();
  }

  private static String folded(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .strip()
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\s_-]+", "-");
  }
}
