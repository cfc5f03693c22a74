package club.emberwell.access;

import io.smallrye.common.net.CidrAddress;
import io.vertx.core.http.HttpServerRequest;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Whose word counts on where a request came from. The framework believes the first address of a
 * chain, which is the sender's own claim; each proxy vouches only for the address it adds at the
 * end. So the chain is read from the end, past the proxies that are trusted.
 */
@ApplicationScoped
public class TrustedProxies {
  static final String HEADER = "X-Forwarded-For";

  /** Nothing but a literal address may be looked at: a name would be asked of a name server. */
  private static final Pattern LITERAL =
      Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*");

  private static final int IPV6_NETWORK = 8;

  private final List<CidrAddress> trusted;

  /**
   * @param proxies addresses, networks ({@code 10.0.0.0/8}) or names
   */
  public TrustedProxies(
      @ConfigProperty(name = "emberwell.trusted-proxies") Optional<List<String>> proxies) {
    trusted = proxies.orElse(List.of()).stream().flatMap(ProxyNetwork::read).toList();
  }

  /** The address of whoever asked the outermost trusted proxy, or of the peer itself. */
  String sender(HttpServerRequest request) {
    String sender = request.connection().remoteAddress().hostAddress();
    List<String> chain = chain(request);
    for (int i = chain.size() - 1; i >= 0 && trusts(sender); i--) {
      if (!LITERAL.matcher(chain.get(i)).matches()) {
        break;
      }
      sender = chain.get(i);
    }
    return sender;
  }

  /** What counts as one sender: an address of IPv4, the network (64 bits) of one of IPv6. */
  public String network(HttpServerRequest request) {
    return network(sender(request));
  }

  /** The same of a literal address. */
  public static String network(String address) {
    if (address.indexOf(':') < 0) {
      return address;
    }
    try {
      byte[] bytes = InetAddress.getByName(address).getAddress();
      return HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, IPV6_NETWORK));
    } catch (UnknownHostException e) {
      return address;
    }
  }

  private static List<String> chain(HttpServerRequest request) {
    List<String> chain = new ArrayList<>();
    for (String header : request.headers().getAll(HEADER)) {
      for (String each : header.split(",")) {
        chain.add(withoutPort(each.strip()));
      }
    }
    return chain;
  }

  /** Some proxies write {@code 192.0.2.1:5000} or {@code [2001:db8::1]:5000}. */
  private static String withoutPort(String address) {
    if (address.startsWith("[")) {
      int end = address.indexOf(']');
      return end < 0 ? address : address.substring(1, end);
    }
    int colon = address.indexOf(':');
    return colon >= 0 && colon == address.lastIndexOf(':') ? address.substring(0, colon) : address;
  }

  /** Whether it is a proxy that is believed. */
  public boolean trusts(String address) {
    if (trusted.isEmpty()) {
      return false;
    }
    try {
      // literal, so nothing is looked up; the zone of a link-local address (RFC 4007) says nothing
      InetAddress peer = InetAddress.getByName(address.replaceFirst("%.*", ""));
      return trusted.stream().anyMatch(network -> network.matches(peer));
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
