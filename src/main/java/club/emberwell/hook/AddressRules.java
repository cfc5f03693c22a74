package club.emberwell.hook;

import io.smallrye.common.net.CidrAddress;
import io.smallrye.common.net.Inet;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Which addresses a webhook may call: those of the public internet, and what the operator allows
 * besides. What is not public: IANA's registries of special-purpose addresses (RFC 6890), and of
 * IPv6 all that is not global unicast (RFC 4291) or holds an IPv4 address in itself.
 */
final class AddressRules {
  private static final List<CidrAddress> SPECIAL =
      networks(
          "0.0.0.0/8",
          "10.0.0.0/8",
          "100.64.0.0/10",
          "127.0.0.0/8",
          "169.254.0.0/16",
          "172.16.0.0/12",
          "192.0.0.0/24",
          "192.0.2.0/24",
          "192.88.99.0/24",
          "192.168.0.0/16",
          "198.18.0.0/15",
          "198.51.100.0/24",
          "203.0.113.0/24",
          "224.0.0.0/4",
          "240.0.0.0/4",
          "2001::/23",
          "2001:db8::/32",
          "2002::/16",
          "3fff::/20");

  /** Of IPv6, nothing outside is global: loopback, link-local, unique local, mapped, NAT64. */
  private static final CidrAddress GLOBAL_V6 = network("2000::/3");

  private final List<CidrAddress> allowed;
  private final List<String> hosts;

  /**
   * @param allow networks, addresses and names of hosts
   * @throws IllegalArgumentException where one is none of these
   */
  AddressRules(Collection<String> allow) {
    List<String> given = allow.stream().map(String::strip).filter(s -> !s.isEmpty()).toList();
    allowed = given.stream().filter(AddressRules::numeric).map(AddressRules::network).toList();
    hosts = given.stream().filter(s -> !numeric(s)).map(s -> s.toLowerCase(Locale.ROOT)).toList();
  }

  private static boolean numeric(String text) {
    return text.contains("/") || Inet.parseInetAddress(text) != null;
  }

  /** Whether the operator allows this host by name. */
  boolean namesHost(String host) {
    return hosts.contains(host.toLowerCase(Locale.ROOT));
  }

  /** Whether the operator allows this address. */
  boolean allows(InetAddress address) {
    return any(allowed, address);
  }

  /** Whether the whole internet reaches this address. */
  static boolean isPublic(InetAddress address) {
    boolean global = address instanceof Inet4Address || any(List.of(GLOBAL_V6), address);
    return global && !any(SPECIAL, address);
  }

  private static boolean any(List<CidrAddress> networks, InetAddress address) {
    return networks.stream().anyMatch(network -> network.matches(address));
  }

  private static List<CidrAddress> networks(String... all) {
    return Stream.of(all).map(AddressRules::network).toList();
  }

  private static CidrAddress network(String text) {
    InetAddress address = text.contains("/") ? null : Inet.parseInetAddress(text);
    CidrAddress network =
        address == null
            ? Inet.parseCidrAddress(text)
            : CidrAddress.create(address, address.getAddress().length * Byte.SIZE);
    if (network == null) {
      throw new IllegalArgumentException("emberwell.webhooks.allow cannot be read: " + text);
    }
    return network;
  }
}
