package club.emberwell.web.phone;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * How the site stands on a phone's home screen (W3C Web Application Manifest).
 *
 * @param startUrl where it opens
 * @param display {@code standalone}: without the browser's own bars
 * @param themeColor of the phone's bar above it
 * @param backgroundColor while it opens
 */
record Manifest(
    String name,
    @JsonProperty("short_name") String shortName,
    @JsonProperty("start_url") String startUrl,
    String display,
    @JsonProperty("theme_color") String themeColor,
    @JsonProperty("background_color") String backgroundColor,
    List<Icon> icons,
    List<Shortcut> shortcuts) {
  /** A picture; {@code maskable} ones have room round them for the phone to cut. */
  record Icon(String src, String sizes, String type, String purpose) {}

  /** A place that a long press on the icon offers. */
  record Shortcut(String name, String url) {}
}
