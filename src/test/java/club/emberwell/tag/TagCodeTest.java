package club.emberwell.tag;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A label is read as a person types it, and no slip leads to another thing. */
class TagCodeTest {
  private static final String ALPHABET = TagCode.ALPHABET;

  @Test
  void noCharacterLooksLikeAnother() {
    assertEquals(29, ALPHABET.chars().distinct().count());
    assertFalse(ALPHABET.chars().anyMatch(c -> "BILOSUZ".indexOf(c) >= 0));
  }

  /** Of all codes with three characters: each wrong one in each place, each swap in each place. */
  @Test
  void everyWrongCharacterAndEverySwapIsNoticed() {
    for (int n = 0; n < 29 * 29 * 29; n++) {
      char[] body = new char[3];
      for (int i = 0, rest = n; i < 3; i++, rest /= 29) {
        body[i] = ALPHABET.charAt(rest % 29);
      }
      String code = TagCode.of(new String(body)).text().replace("-", "");
      for (int at = 0; at < code.length(); at++) {
        assertOnlyOneFits(code, at);
        for (int other = at + 1; other < code.length(); other++) {
          assertSwapIsNoticed(code, at, other);
        }
      }
    }
  }

  /** Only the check of each is computed, which is what reading compares. */
  private static void assertOnlyOneFits(String code, int at) {
    char[] wrong = code.toCharArray();
    for (int c = 0; c < 29; c++) {
      wrong[at] = ALPHABET.charAt(c);
      String said = new String(wrong);
      assertEquals(said.equals(code), fits(said), said);
    }
  }

  private static void assertSwapIsNoticed(String code, int at, int other) {
    char[] swapped = code.toCharArray();
    swapped[at] = code.charAt(other);
    swapped[other] = code.charAt(at);
    String said = new String(swapped);
    assertEquals(said.equals(code), fits(said), said);
  }

  private static boolean fits(String code) {
    int last = code.length() - 1;
    String right = TagCode.of(code.substring(0, last)).text();
    return right.charAt(right.length() - 1) == code.charAt(last);
  }

  @Test
  void longerCodesNoticeTheSame() {
    Random random = new Random(20260912);
    for (int draw = 0; draw < 2_000; draw++) {
      String code = TagCode.drawn(4 + draw % 2, random).text().replace("-", "");
      for (int at = 0; at < code.length(); at++) {
        assertOnlyOneFits(code, at);
        for (int other = at + 1; other < code.length(); other++) {
          assertSwapIsNoticed(code, at, other);
        }
      }
    }
  }

  @Test
  void drawnCodesAreNeitherWordsNorNumbersAndAreReadAgain() {
    Random random = new Random(20260912);
    for (int draw = 0; draw < 5_000; draw++) {
      TagCode code = TagCode.drawn(3 + draw % 3, random);
      String body = code.text().substring(0, code.text().indexOf('-'));
      assertTrue(Character.isLetter(body.charAt(0)), body);
      assertTrue(body.chars().anyMatch(Character::isDigit), body);
      assertEquals(code, TagCode.read(code.text()).value().orElseThrow());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "K7F-4",
        "k7f-4",
        "K7F4",
        " k7f 4 ",
        "K7F – 4",
        "https://club.example/t/K7F-4",
        "http://localhost:8080/t/k7f4"
      })
  void aTagIsReadHoweverItIsTyped(String typed) {
    assertEquals("K7F-4", TagCode.read(typed).value().map(TagCode::text).orElse("none"));
  }

  @Test
  void lookAlikesAreUnderstood() {
    for (String[] pair :
        new String[][] {
          {"A0C", "AOC"},
          {"A1C", "AIC"},
          {"A1C", "alc"},
          {"A2C", "AZC"},
          {"A5C", "asc"},
          {"A8C", "ABC"},
          {"AV2", "AU2"}
        }) {
      TagCode code = TagCode.of(pair[0]);
      String check = code.text().substring(3);
      assertEquals(code, TagCode.read(pair[1] + check).value().orElseThrow(), pair[1]);
    }
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "null",
      value = {
        "null",
        "''",
        "K7",
        "K7F",
        "K7F-4GGG",
        "K7F-!",
        "/t/",
        "7 Maple Street",
        "K7F.G",
        "Ж7F-G"
      })
  void whatIsNoTagSaysHowOneLooks(String typed) {
    assertEquals(
        "A tag is four to six letters and digits, such as K7F-4.",
        TagCode.read(typed).remarks().get(0).detail());
  }

  @Test
  void aWrongCheckCharacterSaysSo() {
    assertEquals(
        "K7F-5 is not a tag: a character is wrong, or two are swapped.",
        TagCode.read("k7fs").remarks().get(0).detail());
  }
}
