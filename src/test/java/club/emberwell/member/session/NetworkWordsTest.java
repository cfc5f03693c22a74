package club.emberwell.member.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetworkWordsTest {
  /** Addresses for documentation, RFC 5737 and RFC 3849. */
  @ParameterizedTest
  @CsvSource({
    "4:c00002, 192.0.2.0/24",
    "16:20010db800010002, 2001:db8:1:2:0:0:0:0/64",
    "unknown, unknown",
    "4:zz, unknown",
  })
  void aNetworkIsWrittenAsPeopleKnowIt(String prefix, String words) {
    assertEquals(words, NetworkWords.of(prefix));
  }
}
