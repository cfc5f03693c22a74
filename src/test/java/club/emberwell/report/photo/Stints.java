package club.emberwell.report.photo;

import io.smallrye.config.SmallRyeConfigBuilder;
import java.util.Map;

/** Turns for tests, as the pool gives them. */
final class Stints {
  private static final long PLENTY = 400L << 20;

  private Stints() {}

  /**
   * The limits as they are but for some.
   *
   * @param other by their names
   */
  static PictureLimits limits(Map<String, String> other) {
    SmallRyeConfigBuilder builder =
        new SmallRyeConfigBuilder().withMapping(PictureLimits.class).addDiscoveredConverters();
    other.forEach(
        (name, value) -> builder.withDefaultValue("emberwell.limits.pictures." + name, value));
    return builder.build().getConfigMapping(PictureLimits.class);
  }

  static PictureStint any() {
    return with(PLENTY, Map.of());
  }

  static PictureStint with(long memory, Map<String, String> other) {
    return new PictureStint(limits(other), new PictureMemory(memory));
  }

  static CleanPicture clean(byte[] upload) {
    return PictureCleaner.clean(upload, any());
  }
}
