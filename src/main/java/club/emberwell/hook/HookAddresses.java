package club.emberwell.hook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.List;

/**
 * Reads the address of a webhook and says where to connect. It looks at every address a name has,
 * and the call goes to one that was looked at: a name that says something else a moment later leads
 * nowhere else.
 */
@ApplicationScoped
class HookAddresses {
  private static final int HTTPS = 443;
  private static final int HTTP = 80;
  private static final int LAST_PORT = 65_535;

  private final HostNames names;
  private final AddressRules rules;

  @Inject
  HookAddresses(HostNames names, HookConfig config) {
    this(names, new AddressRules(config.allow().orElse(List.of())));
  }

  HookAddresses(HostNames names, AddressRules rules) {
    this.names = names;
    this.rules = rules;
  }

  /** What cannot or must not be called, in a sentence that names no address. */
  static final class Refused extends Exception {
    Refused(String sentence) {
      super(sentence);
    }
  }

  /**
   * Where a call goes.
   *
   * @param host as it stands in the address, for TLS and the request
   * @param at the address to connect to
   */
  record Target(boolean tls, String host, InetAddress at, int port, String path) {}

  /** An address as typed: absolute, without name and password, without a fragment. */
  static URI read(String url) throws Refused {
    try {
      URI uri = new URI(url);
      boolean web = "https".equals(uri.getScheme()) || "http".equals(uri.getScheme());
      if (!web || uri.getHost() == null || uri.getPort() == 0 || uri.getPort() > LAST_PORT) {
        throw new Refused("Type a whole address, such as https://tools.club.example/hook.");
      }
      if (uri.getRawUserInfo() != null || uri.getRawFragment() != null) {
        throw new Refused("Leave out the name and password before the @, and what is behind a #.");
      }
      return uri;
    } catch (URISyntaxException e) {
      throw new Refused("This cannot be read as an address. Copy it whole, with https:// first.");
    }
  }

  /** Looks the name up and holds what it finds against the rules. */
  Target target(String url) throws Refused {
    URI uri = read(url);
    String host = uri.getHost().replaceAll("^\\[|]$", "");
    boolean named = rules.namesHost(host);
    List<InetAddress> all = lookedUp(host);
    boolean allowed = named || all.stream().allMatch(rules::allows);
    if (!allowed && !all.stream().allMatch(a -> AddressRules.isPublic(a) || rules.allows(a))) {
      throw new Refused(
          "This address is inside a private network. The operator of this server must allow it.");
    }
    boolean tls = uri.getScheme().equals("https");
    if (!tls && !allowed) {
      throw new Refused("Use https://. The operator of this server must allow http:// here.");
    }
    String path = uri.getRawPath().isEmpty() ? "/" : uri.getRawPath();
    String query = uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery();
    int port = uri.getPort() > 0 ? uri.getPort() : tls ? HTTPS : HTTP;
    return new Target(tls, uri.getHost(), all.get(0), port, path + query);
  }

  private List<InetAddress> lookedUp(String host) throws Refused {
    try {
      return names.of(host);
    } catch (UnknownHostException e) {
      throw new Refused("No computer of this name can be found. Check the spelling.");
    }
  }
}
