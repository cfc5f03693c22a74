package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The address that members use, as an operator chose it. */
class PublicUrlTest {
  /** OWASP ASVS 5.0, V12.2.1. */
  @ParameterizedTest
  @CsvSource({
    "https://club.example, false",
    "http://club.example, true",
    "http://192.168.1.20:8080, true",
    "http://[fd00::1]:8080, true",
    "http://127.0.0.1:8080, false",
    "http://localhost:8080, false",
    "http://[::1]:8080, false"
  })
  void membersWhoComeWithoutTlsAreWarnedAbout(String url, boolean warned) {
    assertEquals(warned, PublicUrlFinding.isPlain(url));
  }
}
