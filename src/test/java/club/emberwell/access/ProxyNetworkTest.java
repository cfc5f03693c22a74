package club.emberwell.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Prefixes by RFC 4632 section 3.1 (IPv4) and RFC 4291 sections 2.3 and 2.5.5.2 (IPv6). */
class ProxyNetworkTest {
  private static boolean holds(String network, String address) throws UnknownHostException {
    InetAddress asked = InetAddress.getByName(address);
    return ProxyNetwork.read(network).anyMatch(each -> each.matches(asked));
  }

  @ParameterizedTest
  @CsvSource({
    // the examples of RFC 4632: 10.23.64.0/20 ends at 10.23.79.255
    "10.23.64.0/20, 10.23.64.0, true",
    "10.23.64.0/20, 10.23.79.255, true",
    "10.23.64.0/20, 10.23.80.0, false",
    "10.23.64.0/20, 10.23.63.255, false",
    "10.1.2.3/8, 10.255.0.1, true",
    "192.0.2.7/32, 192.0.2.7, true",
    "192.0.2.7/32, 192.0.2.6, false",
    "192.0.2.7, 192.0.2.7, true",
    "192.0.2.7, 192.0.2.8, false",
    "0.0.0.0/0, 255.255.255.255, true",
    "0.0.0.0/0, 2001:db8::1, false",
    "0.0.0.0/1, 127.255.255.255, true",
    "0.0.0.0/1, 128.0.0.0, false",
    // the example of RFC 4291: 60 bits of 20010DB80000CD3
    "2001:db8:0:cd30::/60, 2001:db8:0:cd3f:ffff:ffff:ffff:ffff, true",
    "2001:db8:0:cd30::/60, 2001:db8:0:cd40::, false",
    "2001:db8:0:cd30::/60, 2001:db8:0:cd2f:ffff::, false",
    "2001:db8:0:cd30:123:4567:89ab:cdef/60, 2001:db8:0:cd31::1, true",
    // all bits of the prefix set: an address of any other network, not of this
    "2001:db8::/32, ffff:ffff::1, false",
    "fd00::/8, ff02::1, false",
    "2001:db8::/33, 2001:db8:7fff::1, true",
    "2001:db8::/33, 2001:db8:8000::1, false",
    "::/0, ffff::1, true",
    "::/0, 192.0.2.1, false",
    "::1/128, ::1, true",
    "::1/128, ::2, false",
    "::1, ::1, true",
    "fe80::/10, fe80::1, true",
    "fe80::/10, febf::1, true",
    "fe80::/10, fec0::1, false",
    // IPv4 in the form of IPv6
    "10.0.0.0/8, ::ffff:10.1.2.3, true",
    "::ffff:10.0.0.0/104, 10.1.2.3, true",
    "::ffff:10.0.0.0/104, 11.1.2.3, false",
    "::ffff:192.0.2.7, 192.0.2.7, true",
    "::ffff:192.0.2.7, 192.0.2.8, false",
    "::ffff:0:0/96, 192.0.2.8, true",
  })
  void aNetworkHoldsWhatBeginsWithItsPrefix(String network, String address, boolean held)
      throws UnknownHostException {
    assertEquals(held, holds(network, address), network + " and " + address);
  }

  @Test
  void aNameMeansItsAddresses() throws UnknownHostException {
    assertTrue(holds("localhost", InetAddress.getByName("localhost").getHostAddress()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "10.0.0.0/33",
        "10.0.0.0/-1",
        "10.0.0.0/08",
        "10.0.0.0/",
        "10.0.0.0/ 8",
        "10.0.0/8",
        "10.1",
        "167772161",
        "256.0.0.1",
        "2001:db8::/129",
        "2001:db8:::/32",
        "fe80::1%eth0",
        "fe80::%1/64",
        "http://10.0.0.1",
        "10.0.0.1:8080",
        "-name",
        "two words",
        "*",
        "no-such-computer.invalid"
      })
  void whatIsNoneIsRefusedWithASentenceThatNamesIt(String line) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> ProxyNetwork.read(line).toList());
    assertTrue(refused.getMessage().contains("\"" + line + "\""), refused.getMessage());
  }
}
