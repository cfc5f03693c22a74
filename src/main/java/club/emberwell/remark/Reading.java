package club.emberwell.remark;

import java.util.List;
import java.util.Optional;

/**
 * What came of reading one written value: never an exception for bad input.
 *
 * @param written exactly what was typed
 * @param value present unless a remark is an error
 * @param remarks in the order noticed
 */
public record Reading<T>(String written, Optional<T> value, List<Remark> remarks) {
  public Reading {
    remarks = List.copyOf(remarks);
  }

  public static <T> Reading<T> of(String written, T value, Remark... remarks) {
    return new Reading<>(written, Optional.of(value), List.of(remarks));
  }

  public static <T> Reading<T> refused(String written, Remark... remarks) {
    return new Reading<>(written, Optional.empty(), List.of(remarks));
  }

  /** The same reading with its remarks moved to a field. */
  public Reading<T> at(String pointer) {
    return new Reading<>(written, value, remarks.stream().map(r -> r.at(pointer)).toList());
  }
}
