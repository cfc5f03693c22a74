package club.emberwell.web.desk;

import java.util.Locale;

/** Ids made from words: lower-case letters and digits with dashes between. */
final class Slugs {
  static final int MOST = 60;

  private Slugs() {}

  static String of(String text) {
    String dashed = text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String cut = dashed.length() > MOST ? dashed.substring(0, MOST) : dashed;
    return cut.replaceAll("^-|-$", "");
  }
}
