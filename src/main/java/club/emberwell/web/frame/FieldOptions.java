package club.emberwell.web.frame;

import club.emberwell.web.frame.Field.Option;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** The values of a field to choose from, and which of them are taken. */
record FieldOptions(List<Option> all) {
  static final FieldOptions NONE = new FieldOptions(List.of());

  /** These taken and no others. */
  FieldOptions only(Predicate<String> taken) {
    return taking(option -> taken.test(option.value()));
  }

  /** This one taken besides. */
  FieldOptions also(String value) {
    return taking(option -> option.selected() || option.value().equals(value));
  }

  /** One more to choose. */
  FieldOptions with(String value, String label) {
    return new FieldOptions(
        Stream.concat(all.stream(), Stream.of(new Option(value, label, false))).toList());
  }

  /** What the taken ones are called; empty where none is. */
  Optional<String> taken() {
    return all.stream()
        .filter(Option::selected)
        .map(Option::label)
        .reduce((one, other) -> one + ", " + other);
  }

  private FieldOptions taking(Predicate<Option> taken) {
    return new FieldOptions(
        all.stream()
            .map(option -> new Option(option.value(), option.label(), taken.test(option)))
            .toList());
  }
}
