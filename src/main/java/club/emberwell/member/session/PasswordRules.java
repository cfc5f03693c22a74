package club.emberwell.member.session;

import club.emberwell.member.MemberLimits;
import club.emberwell.member.Texts;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What makes a password acceptable: length and not being easily guessed, no composition rules
 * (OWASP ASVS 5.0, chapter V6.2).
 */
@ApplicationScoped
public class PasswordRules {
  private static final List<String> LISTS =
      List.of(
          "/club/emberwell/member/session/common-passwords.txt",
          // of zxcvbn's jar: the 30,000 most used in published leaks
          "/com/nulabinc/zxcvbn/matchers/dictionaries/passwords.txt");

  private static final List<String> SITE_WORDS =
      List.of("emberwell", "engraving", "engraver", "engrave", "laser", "password", "passwort");

  /** A password of site words and digits must bring so many characters of its own. */
  private static final int OWN_CHARACTERS = 4;

  private final Set<String> common = load();

  /** The form in which a password is hashed: NFKC, so that keyboards of all makes agree. */
  public static String normal(String password) {
    return Normalizer.normalize(password, Normalizer.Form.NFKC);
  }

  /**
   * What is wrong with a new password, if anything.
   *
   * @param field where to point
   * @param handle the member's own name, a word nobody else would need to guess
   */
  public Optional<Remark> check(String password, String field, String handle) {
    if (password == null || password.isEmpty()) {
      return error(RemarkId.PASSWORD_MISSING, field, "Please enter a password.");
    }
    if (!Texts.isCleanUnicode(password)) {
      return error(
          RemarkId.PASSWORD_ENCODING, field, "The password has characters that are not text.");
    }
    String normal = normal(password);
    int length = normal.codePointCount(0, normal.length());
    if (length < MemberLimits.PASSWORD_MIN) {
      return error(
          RemarkId.PASSWORD_SHORT,
          field,
          "A password has at least " + MemberLimits.PASSWORD_MIN + " characters; 15 are better.");
    }
    if (length > MemberLimits.PASSWORD_MAX) {
      return error(
          RemarkId.PASSWORD_LONG,
          field,
          "A password has at most " + MemberLimits.PASSWORD_MAX + " characters.");
    }
    return guessable(normal.toLowerCase(Locale.ROOT), handle)
        ? error(RemarkId.PASSWORD_COMMON, field, "This password is too easy to guess.")
        : Optional.empty();
  }

  private boolean guessable(String lower, String handle) {
    if (common.contains(lower)) {
      return true;
    }
    String own = handle == null ? lower : lower.replace(handle.toLowerCase(Locale.ROOT), "");
    for (String word : SITE_WORDS) {
      own = own.replace(word, "");
    }
    boolean borrowed = own.length() < lower.length();
    String letters = own.replaceAll("[\\d\\p{Punct}\\s]", "");
    return borrowed && letters.length() < OWN_CHARACTERS
        || lower.chars().distinct().count() < OWN_CHARACTERS;
  }

  private static Optional<Remark> error(RemarkId id, String field, String detail) {
    return Optional.of(Remark.error(id, field, detail));
  }

  private static Set<String> load() {
    return LISTS.stream()
        .flatMap(PasswordRules::lines)
        .filter(line -> line.length() >= MemberLimits.PASSWORD_MIN && !line.startsWith("#"))
        .collect(Collectors.toUnmodifiableSet());
  }

  private static Stream<String> lines(String list) {
    try (InputStream in = PasswordRules.class.getResourceAsStream(list)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
