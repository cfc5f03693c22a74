package club.emberwell.remark;

import java.util.Optional;
import java.util.stream.Stream;

/** One of the known words of something: named by its code in the API, in addresses and files. */
public interface Coded {
  /** Never changes. */
  String code();

  /** The word with exactly this code; empty where none has it. */
  static <E extends Enum<E> & Coded> Optional<E> of(Class<E> words, String code) {
    return Stream.of(words.getEnumConstants()).filter(word -> word.code().equals(code)).findFirst();
  }
}
