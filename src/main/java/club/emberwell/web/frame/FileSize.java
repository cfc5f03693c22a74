package club.emberwell.web.frame;

import java.util.Locale;

/** Sizes of files as people say them. */
public final class FileSize {
  private FileSize() {}

  /** In the unit in which it has at most three digits before the point. */
  public static String of(long bytes) {
    if (bytes < 1_000) {
      return bytes + " B";
    }
    if (bytes < 1_000_000) {
      return Math.round(bytes / 1e3) + " kB";
    }
    return bytes < 1_000_000_000
        ? String.format(Locale.ROOT, "%.1f MB", bytes / 1e6)
        : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }
}
