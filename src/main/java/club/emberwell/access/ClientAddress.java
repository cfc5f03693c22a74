package club.emberwell.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Where the request came from. Headers of proxies count only from addresses in {@code
 * emberwell.trusted-proxies}.
 */
@RequestScoped
public class ClientAddress {
  private static final int IPV4_KEPT = 3;
  private static final int IPV6_KEPT = 8;

  private final RoutingContext request;
  private final TrustedProxies proxies;

  ClientAddress(RoutingContext request, TrustedProxies proxies) {
    this.request = request;
    this.proxies = proxies;
  }

  /** The network for counting tries: the first 24 bits of IPv4, the first 64 of IPv6. */
  public String prefix() {
    return prefix(proxies.sender(request.request()));
  }

  static String prefix(String address) {
    try {
      // a literal address, so nothing is looked up; a mapped IPv4 address comes out as IPv4
      byte[] bytes = InetAddress.getByName(address).getAddress();
      int kept = bytes.length == Integer.BYTES ? IPV4_KEPT : IPV6_KEPT;
      return bytes.length + ":" + HexFormat.of().formatHex(Arrays.copyOf(bytes, kept));
    } catch (UnknownHostException e) {
      return "unknown";
    }
  }
}
