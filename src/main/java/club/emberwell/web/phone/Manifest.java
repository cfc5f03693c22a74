package club.emberwell.web.phone;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * How the site stands on a phone's home screen (W3C Web Application Manifest).
 *
 * @param display {@code standalone}: without the browser's own bars
 */
record Manifest(
    @JsonUnwrapped Words words,
    @JsonUnwrapped Where where,
    String display,
    @JsonUnwrapped Colours colours,
    List<Icon> icons,
    List<Shortcut> shortcuts) {
  /**
   * What it is called.
   *
   * @param lang of all of its words
   */
  record Words(
      String name,
      @JsonProperty("short_name") String shortName,
      String description,
      String lang,
      String dir) {}

  /**
   * Which pages are the app.
   *
   * @param id by which phones know it again, whatever else changes
   * @param startUrl where it opens
   */
  record Where(String id, @JsonProperty("start_url") String startUrl, String scope) {}

  /**
   * Colours round the page.
   *
   * @param theme of the phone's bar above it
   * @param background while it opens
   */
  record Colours(
      @JsonProperty("theme_color") String theme,
      @JsonProperty("background_color") String background) {}

  /** A picture; {@code maskable} ones have room round them for the phone to cut. */
  record Icon(String src, String sizes, String type, String purpose) {}

  /** A place that a long press on the icon offers. */
  record Shortcut(String name, String url) {}
}
