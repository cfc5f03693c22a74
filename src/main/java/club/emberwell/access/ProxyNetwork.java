package club.emberwell.access;

import io.smallrye.common.net.CidrAddress;
import io.smallrye.common.net.Inet;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads which addresses are meant by a line of {@code emberwell.trusted-proxies}: an address, a
 * network (RFC 4632, RFC 4291 section 2.3) or the name of a computer, looked up once. Bits behind
 * the prefix do not count. An IPv4 address in its IPv6 form ({@code ::ffff:10.0.0.1}) is the IPv4
 * address, as Java reads those of connections.
 */
public final class ProxyNetwork {
  private static final int MAPPED_BITS = 96;
  private static final Pattern NETWORK = Pattern.compile("([0-9A-Fa-f:.]+)/(0|[1-9][0-9]{0,2})");

  /** RFC 1123 section 2.1; a name of digits alone would be read as a number of 32 bits. */
  private static final Pattern NAME =
      Pattern.compile(
          "(?=.*[A-Za-z])[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?"
              + "(\\.[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?)*");

  private ProxyNetwork() {}

  /**
   * The networks one line means; several where a name has several addresses.
   *
   * @throws IllegalArgumentException where it is none of these, with a sentence
   */
  public static Stream<CidrAddress> read(String line) {
    String text = line.strip();
    var network = NETWORK.matcher(text);
    if (network.matches()) {
      int bits = Integer.parseInt(network.group(2));
      return Stream.of(network(literal(network.group(1), text), bits, text));
    }
    if (NAME.matcher(text).matches()) {
      return lookedUp(text);
    }
    InetAddress address = literal(text, text);
    return Stream.of(network(address, address.getAddress().length * Byte.SIZE, text));
  }

  private static InetAddress literal(String address, String whole) {
    InetAddress read = address.contains("%") ? null : Inet.parseInetAddress(address);
    if (read == null) {
      throw new IllegalArgumentException(
          "\"" + whole + "\" is no address, network (10.0.0.0/8) or name of a computer");
    }
    return read;
  }

  private static CidrAddress network(InetAddress address, int bits, String whole) {
    byte[] bytes = address.getAddress();
    if (bits > bytes.length * Byte.SIZE) {
      throw new IllegalArgumentException(
          "\"" + whole + "\" has more bits than the address: " + bytes.length * Byte.SIZE);
    }
    // RFC 4291 section 2.5.5.2: Java makes an Inet4Address of the bytes of a mapped one
    InetAddress plain = byBytes(bytes);
    boolean mapped = bytes.length > plain.getAddress().length;
    return mapped && bits >= MAPPED_BITS
        ? CidrAddress.create(plain, bits - MAPPED_BITS)
        : CidrAddress.create(address, bits);
  }

  private static InetAddress byBytes(byte[] bytes) {
    try {
      return InetAddress.getByAddress(bytes);
    } catch (UnknownHostException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Stream<CidrAddress> lookedUp(String name) {
    try {
      return Arrays.stream(InetAddress.getAllByName(name))
          .map(
              address ->
                  CidrAddress.create(
                      address,
                      address instanceof Inet4Address ? Integer.SIZE : Long.SIZE + Long.SIZE));
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("no computer called \"" + name + "\" can be found", e);
    }
  }
}
