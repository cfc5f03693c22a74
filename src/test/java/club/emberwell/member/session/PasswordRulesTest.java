package club.emberwell.member.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which passwords people may choose: OWASP ASVS 5.0.0, V6.2. */
class PasswordRulesTest {
  private static final String LEAKED = "/com/nulabinc/zxcvbn/matchers/dictionaries/passwords.txt";

  private final PasswordRules rules = new PasswordRules();

  private Optional<String> fault(String password) {
    return rules.check(password, "/password", "marlow").map(Remark::id);
  }

  /** V6.2.1 and V6.2.9: at least 8 characters, and no bound below 64. */
  @Test
  void eightCharactersAreEnoughAndSoAreALotMore() {
    assertEquals(Optional.of(RemarkId.PASSWORD_SHORT.code()), fault("kettle7"));
    assertEquals(Optional.empty(), fault("kettle 7"));
    assertEquals(Optional.empty(), fault("copper ".repeat(18)));
    assertEquals(Optional.of(RemarkId.PASSWORD_LONG.code()), fault("copper ".repeat(19)));
  }

  /** V6.2.5: nobody has to mix kinds of characters, and none is forbidden. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "heronfenland",
        "QUIETHARBOUR",
        "4090 1733 8250",
        "  two  blanks  ",
        "Ωμέγα και ρυάκι",
        "🦊🌲🪵🔥🌧🍂🎣🧭"
      })
  void anyMixtureOfCharactersIsTaken(String password) {
    assertEquals(Optional.empty(), fault(password));
  }

  /** V6.2.4: what everybody tries first, however its letters are written. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "trustno1",
        "football",
        "Starwars",
        "!qaz2wsx",
        "00000000",
        "0123456789",
        "!QAZ2WSX",
        "aaaaaaaabbbb"
      })
  void whatIsTriedFirstIsRefused(String password) {
    assertEquals(Optional.of(RemarkId.PASSWORD_COMMON.code()), fault(password));
  }

  /**
   * V6.2.4 and V6.2.12: the most used of published leaks that are long enough to be chosen here.
   */
  @Test
  void whatLeakedMostIsRefused() throws IOException {
    try (InputStream list = PasswordRulesTest.class.getResourceAsStream(LEAKED)) {
      List<String> most =
          new String(list.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> line.length() >= 8 && !line.startsWith("#"))
              .toList();
      assertTrue(most.size() > 3000 && most.contains("trustno1"), most.size() + " lines");
      assertEquals(List.of(), most.stream().filter(password -> fault(password).isEmpty()).toList());
    }
  }

  /** V6.2.11: words of this place and one's own name, with figures behind them. */
  @ParameterizedTest
  @ValueSource(
      strings = {"emberwell", "Emberwell2026!", "laser-engraver-1", "Passwort 123", "marlow.2026"})
  void wordsOfThisPlaceAloneAreRefused(String password) {
    assertEquals(Optional.of(RemarkId.PASSWORD_COMMON.code()), fault(password));
    assertEquals(Optional.empty(), fault(password + " otter weir"));
  }
}
