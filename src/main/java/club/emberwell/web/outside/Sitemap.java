package club.emberwell.web.outside;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** A map of addresses, or of such maps (sitemaps.org, protocol 0.9). */
final class Sitemap {
  private static final String NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9";

  private final String one;
  private final Xml xml = new Xml();

  private Sitemap(String all, String one) {
    this.one = one;
    xml.open(all, NAMESPACE);
  }

  static Sitemap ofMaps() {
    return new Sitemap("sitemapindex", "sitemap");
  }

  static Sitemap ofPages() {
    return new Sitemap("urlset", "url");
  }

  /**
   * @param updated null where nobody knows
   */
  void add(String address, Instant updated) {
    xml.open(one).text("loc", address);
    if (updated != null) {
      xml.text("lastmod", updated.truncatedTo(ChronoUnit.SECONDS).toString());
    }
    xml.close();
  }

  byte[] bytes() {
    return xml.close().bytes();
  }
}
