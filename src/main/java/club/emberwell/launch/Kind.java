package club.emberwell.launch;

import java.time.DateTimeException;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * How the value of a setting is written.
 *
 * @param words what it must be, as the end of a sentence
 * @param fits whether a text is that
 */
record Kind(String words, Predicate<String> fits) {

  /** A kind that something else reads, which throws where it cannot. */
  static Kind read(String words, Consumer<String> reader) {
    return new Kind(
        words,
        text -> {
          try {
            reader.accept(text);
            return true;
          } catch (IllegalArgumentException | DateTimeException | ArithmeticException e) {
            return false;
          }
        });
  }

  /** Several of this kind, separated by commas. */
  Kind list(String listed) {
    return new Kind(
        listed, text -> Arrays.stream(text.split(",", -1)).map(String::strip).allMatch(fits));
  }
}
