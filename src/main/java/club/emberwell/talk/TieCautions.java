package club.emberwell.talk;

import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Cautions;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.remark.Coded;
import java.util.Optional;

/** The cautions of what an entry is tied to: members write settings into their texts. */
public final class TieCautions {
  private TieCautions() {}

  /** The heaviest; empty where it is tied to nothing that has one. */
  public static Optional<CautionMark> of(Ties ties, Cautions cautions) {
    if (ties == null || ties.material() == null && ties.coating() == null) {
      return Optional.empty();
    }
    return CautionMark.of(
        cautions.forWork(
            ties.material(),
            ties.coating(),
            code(Process.class, ties.process()),
            null,
            code(LaserSource.class, ties.source())));
  }

  private static <E extends Enum<E> & Coded> E code(Class<E> words, String code) {
    return code == null ? null : Coded.of(words, code).orElse(null);
  }
}
