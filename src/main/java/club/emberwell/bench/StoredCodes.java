package club.emberwell.bench;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** What has a code stands in the database by that code, wherever an entity holds one. */
final class StoredCodes {
  private StoredCodes() {}

  /** By code, and back. */
  abstract static class ByCode<E extends Enum<E> & Coded> implements AttributeConverter<E, String> {
    private final Class<E> words;

    ByCode(Class<E> words) {
      this.words = words;
    }

    @Override
    public String convertToDatabaseColumn(E value) {
      return value == null ? null : value.code();
    }

    @Override
    public E convertToEntityAttribute(String stored) {
      return stored == null ? null : Coded.of(words, stored).orElseThrow();
    }
  }

  @Converter(autoApply = true)
  static class OfSource extends ByCode<LaserSource> {
    OfSource() {
      super(LaserSource.class);
    }
  }

  @Converter(autoApply = true)
  static class OfMotion extends ByCode<Motion> {
    OfMotion() {
      super(Motion.class);
    }
  }

  @Converter(autoApply = true)
  static class OfRegime extends ByCode<Regime> {
    OfRegime() {
      super(Regime.class);
    }
  }

  @Converter(autoApply = true)
  static class OfProcess extends ByCode<Process> {
    OfProcess() {
      super(Process.class);
    }
  }

  @Converter(autoApply = true)
  static class OfPulseControl extends ByCode<PulseControl> {
    OfPulseControl() {
      super(PulseControl.class);
    }
  }

  @Converter(autoApply = true)
  static class OfHousing extends ByCode<Housing> {
    OfHousing() {
      super(Housing.class);
    }
  }

  @Converter(autoApply = true)
  static class OfNumberStyle extends ByCode<NumberStyle> {
    OfNumberStyle() {
      super(NumberStyle.class);
    }
  }
}
