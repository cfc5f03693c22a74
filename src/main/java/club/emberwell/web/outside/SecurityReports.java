package club.emberwell.web.outside;

import io.smallrye.config.ConfigMapping;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the operator says to those who find a hole in this server. */
@ConfigMapping(prefix = "emberwell.security")
public interface SecurityReports {
  /** Where to tell of it: addresses of mail, phone or pages; without one nothing is said. */
  Optional<List<Address>> contact();

  /** The page that says what becomes of it. */
  Optional<Address> policy();

  /** As RFC 9116 wants it: mailto, tel or https; an address of mail alone is taken as one. */
  record Address(String uri) {
    private static final Set<String> SCHEMES = Set.of("mailto", "tel", "https");

    public Address {
      uri = uri.matches("[^@:/\\s]+@[^@:/\\s]+") ? "mailto:" + uri : uri;
      String scheme = URI.create(uri).getScheme();
      if (scheme == null || !SCHEMES.contains(scheme)) {
        throw new IllegalArgumentException(
            "it begins with mailto:, tel: or https:, not as \"" + uri + "\" does");
      }
    }
  }
}
